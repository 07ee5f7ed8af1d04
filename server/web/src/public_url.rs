//! The public URL of the server, for links that are printed or sent.

use actix_web::HttpRequest;
use actix_web::http::header::HOST;
use actix_web::web::Data;

/// The URL of the settings, without a closing slash.
#[derive(Clone, Debug, Default)]
pub struct PublicUrl(pub Option<String>);

impl PublicUrl {
    /// The URL of the settings, else the one that this request was sent to. Forwarded hosts are not trusted: a client
    /// may send any.
    pub fn from_request(request: &HttpRequest) -> String {
        let configured = request.app_data::<Data<Self>>();
        let configured = configured.and_then(|url| url.0.clone());
        configured.unwrap_or_else(|| {
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
        let silent = request().app_data(Data::new(PublicUrl(None)));
        assert_eq!(
            PublicUrl::from_request(&silent.to_http_request()),
            "http://elsewhere.example"
        );
        let configured = PublicUrl(Some("https://league.example".to_owned()));
        let configured = request().app_data(Data::new(configured));
        assert_eq!(
            PublicUrl::from_request(&configured.to_http_request()),
            "https://league.example"
        );
    }
}
