//! Static files: part of the binary, their addresses derived from their content, compressed once.

use std::sync::LazyLock;

use actix_web::http::header::{CACHE_CONTROL, CONTENT_TYPE, ContentEncoding, VARY};
use actix_web::web::{Bytes, Path};
use actix_web::{HttpRequest, HttpResponse, get};
use sha2::{Digest, Sha256};

use super::compression::{compress, negotiate};
use super::response::PageResult;
use crate::problem::{HttpFault, Problem};

pub static STYLE: LazyLock<Asset> = LazyLock::new(|| {
    let bytes = include_bytes!("../../../static/tallyhost.css");
    Asset::new("tallyhost", "css", "text/css; charset=utf-8", bytes)
});
/// The script; every page works without it.
pub static SCRIPT: LazyLock<Asset> = LazyLock::new(|| {
    let bytes = include_bytes!("../../../static/tallyhost.js");
    Asset::new("tallyhost", "js", "text/javascript; charset=utf-8", bytes)
});
pub static ICON: LazyLock<Asset> = LazyLock::new(|| {
    let bytes = include_bytes!("../../../static/mark.svg");
    Asset::new("mark", "svg", "image/svg+xml", bytes)
});

pub struct Asset {
    address: String,
    media_type: &'static str,
    bytes: &'static [u8],
    gzip: Option<Bytes>,
    brotli: Option<Bytes>,
}

impl Asset {
    fn new(name: &str, ending: &str, media_type: &'static str, bytes: &'static [u8]) -> Self {
        let digest = hex::encode(Sha256::digest(bytes));
        // Of its 64 digits enough to tell versions apart.
        let digest = digest.get(..12).unwrap_or_default();
        Self {
            address: format!("/static/{name}.{digest}.{ending}"),
            media_type,
            bytes,
            gzip: compress(ContentEncoding::Gzip, bytes).map(Bytes::from),
            brotli: compress(ContentEncoding::Brotli, bytes).map(Bytes::from),
        }
    }

    /// Where it is found; another address whenever its contents change.
    pub fn address(&'static self) -> &'static str {
        &self.address
    }

    fn encoded(&self, encoding: ContentEncoding) -> Option<Bytes> {
        match encoding {
            ContentEncoding::Gzip => self.gzip.clone(),
            ContentEncoding::Brotli => self.brotli.clone(),
            _ => None,
        }
    }
}

#[get("/static/{file}")]
pub async fn find_asset(request: HttpRequest, file: Path<String>) -> PageResult {
    let address = format!("/static/{file}");
    let known = [&*STYLE, &*SCRIPT, &*ICON];
    let asset = known
        .into_iter()
        .find(|asset| asset.address == address)
        .ok_or_else(|| Problem::http(HttpFault::NotFound))?;
    let encoding = negotiate(&request);
    let mut response = HttpResponse::Ok();
    response
        .insert_header((CONTENT_TYPE, asset.media_type))
        .insert_header((VARY, "accept-encoding"))
        .insert_header((CACHE_CONTROL, "public, max-age=31536000, immutable"));
    Ok(match asset.encoded(encoding) {
        Some(bytes) => response.insert_header(encoding).body(bytes),
        None => response.body(asset.bytes),
    })
}
