//! Pictures made by a seed.

use std::io::Cursor;

use image::{DynamicImage, ImageFormat, Rgb, RgbImage};

/// A picture of eight by six patches, 40 by 30 pixels; another seed is another picture.
pub fn picture(seed: u8) -> DynamicImage {
    let shade = |x: u32, y: u32| {
        let (column, row) = (x / 5 + 1, y / 5 + 1);
        let light = (column * 37 + row * 91 + column * row * 17) * u32::from(seed) % 199;
        Rgb([u8::try_from(light).unwrap(); 3])
    };
    DynamicImage::ImageRgb8(RgbImage::from_fn(40, 30, shade))
}

/// The bytes of a picture in a format.
pub fn bytes_of(picture: &DynamicImage, format: ImageFormat) -> Vec<u8> {
    let mut bytes = Cursor::new(Vec::new());
    picture.write_to(&mut bytes, format).unwrap();
    bytes.into_inner()
}
