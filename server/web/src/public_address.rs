//! How people reach the server: what is printed on paper must lead there.

use actix_web::HttpRequest;
use actix_web::http::header::HOST;
use actix_web::web::Data;

/// The address that the settings name, without a closing slash.
#[derive(Clone, Debug, Default)]
pub struct PublicAddress(pub Option<String>);

impl PublicAddress {
    /// That address, else the one that this request was sent to. A client may write any forwarded host
    /// into its request, so that none is believed.
    pub fn of(request: &HttpRequest) -> String {
        let told = request.app_data::<Data<Self>>();
        let told = told.and_then(|told| told.0.clone());
        told.unwrap_or_else(|| {
            let host = request.headers().get(HOST).and_then(|it| it.to_str().ok());
            let host = host.unwrap_or_else(|| request.app_config().host());
            format!("{}://{host}", request.connection_info().scheme())
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
        let request = || request().insert_header(("x-forwarded-host", "evil.example"));
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
