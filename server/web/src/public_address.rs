//! How people reach the server: what is printed on paper must lead there.

use actix_web::HttpRequest;
use actix_web::web::Data;

/// The address that the settings name, without a closing slash.
#[derive(Clone, Debug, Default)]
pub struct PublicAddress(pub Option<String>);

impl PublicAddress {
    /// That address, else the one that this request was sent to.
    pub fn of(request: &HttpRequest) -> String {
        let told = request.app_data::<Data<Self>>();
        let told = told.and_then(|told| told.0.clone());
        told.unwrap_or_else(|| {
            let connection = request.connection_info();
            format!("{}://{}", connection.scheme(), connection.host())
        })
    }
}

#[cfg(test)]
mod tests {
    use actix_web::test::TestRequest;

    use super::*;

    #[test]
    fn the_settings_go_before_what_a_client_says() {
        let request = || TestRequest::default().insert_header(("host", "elsewhere.example"));
        let silent = request().app_data(Data::new(PublicAddress(None)));
        assert_eq!(
            PublicAddress::of(&silent.to_http_request()),
            "http://elsewhere.example"
        );
        let told = PublicAddress(Some("https://league.example".to_owned()));
        let told = request().app_data(Data::new(told));
        assert_eq!(
            PublicAddress::of(&told.to_http_request()),
            "https://league.example"
        );
    }
}
