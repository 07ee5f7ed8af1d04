//! Decoding an uploaded picture and re-encoding it as one that is safe to keep: only pixels survive.

mod file_format;

use std::io::Cursor;

use image::codecs::jpeg::JpegEncoder;
use image::codecs::png::PngDecoder;
use image::codecs::webp::WebPDecoder;
use image::imageops::FilterType;
use image::metadata::Orientation;
use image::{DynamicImage, ImageDecoder, ImageFormat, ImageReader, ImageResult, Limits};
use league::painting::{PerceptualHash, PhotoDigest};
use messages::{Message, painting};
use sha2::{Digest, Sha256};
use store::photos::Photo;

use crate::{Reason, Refusal};

use file_format::end_of_jpeg;
pub use file_format::is_picture;

const MAX_PIXELS: u64 = 40_000_000;
const MAX_SIDE: u32 = 12_000;
/// Forty million pixels of four 16-bit samples: what the largest picture may take while it is read.
const MAX_MEMORY: u64 = 8 * MAX_PIXELS;
/// Longest side that is kept: enough to judge paint by.
const KEPT_SIDE: u32 = 2_048;
const JPEG_QUALITY: u8 = 85;

/// Reads a JPEG, PNG or WebP within limits, turns it upright and writes it anew as a JPEG without
/// anything but its pixels.
///
/// # Errors
/// [`Reason::ImageTooLarge`] by the header, before anything is decoded, and for animations;
/// [`Reason::InvalidImage`].
pub(super) fn decode(bytes: &[u8]) -> Result<Photo, Refusal> {
    let format = match image::guess_format(bytes) {
        Ok(format @ (ImageFormat::Jpeg | ImageFormat::Png | ImageFormat::WebP)) => format,
        _ => return Err(invalid()),
    };
    let reader = || ImageReader::with_format(Cursor::new(bytes), format);
    let (width, height) = reader().into_dimensions().map_err(|_| invalid())?;
    must_fit(width, height)?;
    if is_animated(bytes, format).map_err(|_| invalid())? {
        let message = painting::photo_animated();
        return Err(Refusal::rule(Reason::ImageTooLarge, message));
    }
    // The JPEG decoder fills what is missing with grey; a truncated file is recognised by its missing end.
    if format == ImageFormat::Jpeg && end_of_jpeg(bytes).is_none() {
        return Err(invalid());
    }
    let mut reader = reader();
    reader.limits(limits());
    let upright = upright(reader).map_err(|_| invalid())?;
    encode(upright).map_err(|_| invalid())
}

fn limits() -> Limits {
    let mut limits = Limits::default();
    limits.max_image_width = Some(MAX_SIDE);
    limits.max_image_height = Some(MAX_SIDE);
    limits.max_alloc = Some(MAX_MEMORY);
    limits
}

fn must_fit(width: u32, height: u32) -> Result<(), Refusal> {
    let pixels = u64::from(width) * u64::from(height);
    let side = width.max(height);
    let too_large = |message: Message, limit: u64, actual: u64| {
        let refusal = Refusal::rule(Reason::ImageTooLarge, message);
        Err(refusal.fact("limit", limit).fact("actual", actual))
    };
    if side > MAX_SIDE {
        let message = painting::photo_side(MAX_SIDE, side);
        return too_large(message, MAX_SIDE.into(), side.into());
    }
    if pixels > MAX_PIXELS {
        let message = painting::photo_pixels(MAX_PIXELS, pixels);
        return too_large(message, MAX_PIXELS, pixels);
    }
    Ok(())
}

fn is_animated(bytes: &[u8], format: ImageFormat) -> ImageResult<bool> {
    match format {
        ImageFormat::Png => PngDecoder::with_limits(Cursor::new(bytes), limits())?.is_apng(),
        ImageFormat::WebP => Ok(WebPDecoder::new(Cursor::new(bytes))?.has_animation()),
        _ => Ok(false),
    }
}

fn upright(reader: ImageReader<Cursor<&[u8]>>) -> ImageResult<DynamicImage> {
    let mut decoder = reader.into_decoder()?;
    // A picture whose notes cannot be read is shown as it lies: the pixels alone make it a photo.
    let orientation = decoder.orientation().unwrap_or(Orientation::NoTransforms);
    let mut image = DynamicImage::from_decoder(decoder)?;
    image.apply_orientation(orientation);
    Ok(image)
}

fn encode(image: DynamicImage) -> ImageResult<Photo> {
    let image = DynamicImage::ImageRgb8(image.into_rgb8());
    let mut digest = Sha256::new();
    digest.update(image.width().to_be_bytes());
    digest.update(image.as_bytes());
    let likeness = likeness(&image);
    let kept = match image.width().max(image.height()) > KEPT_SIDE {
        true => image.resize(KEPT_SIDE, KEPT_SIDE, FilterType::Triangle),
        false => image,
    };
    let mut jpeg = Vec::new();
    JpegEncoder::new_with_quality(&mut jpeg, JPEG_QUALITY).encode_image(&kept)?;
    Ok(Photo {
        digest: PhotoDigest(digest.finalize().into()),
        likeness,
        jpeg,
    })
}

fn likeness(image: &DynamicImage) -> PerceptualHash {
    let small = image.resize_exact(9, 8, FilterType::Triangle).into_luma8();
    let mut rows = [[0; 9]; 8];
    for (row, light) in rows.iter_mut().zip(small.rows()) {
        for (cell, pixel) in row.iter_mut().zip(light) {
            *cell = pixel.0[0];
        }
    }
    PerceptualHash::from_rows(&rows)
}

fn invalid() -> Refusal {
    Refusal::rule(Reason::InvalidImage, painting::photo_damaged())
}
