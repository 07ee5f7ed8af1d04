//! The key that signs access tokens, and where it comes from.

use std::fmt;
use std::fs::{self, OpenOptions};
use std::io::{self, Write};
use std::os::unix::fs::OpenOptionsExt;
use std::path::{Path, PathBuf};

/// What signs access tokens with HMAC-SHA-256.
///
/// At least 256 bits: RFC 7518, section 3.2, wants a key no shorter than the hash.
#[derive(Clone)]
pub struct SigningKey(Vec<u8>);

const MIN_KEY_BYTES: usize = 32;

/// Where the key comes from.
#[derive(Debug)]
pub enum KeySource {
    /// From the configuration.
    Given(SigningKey),
    /// From a file, which is made at the first start.
    File(PathBuf),
    /// Drawn for this process alone, which neither signs nor verifies a token.
    Ephemeral,
}

/// Why there is no key.
#[derive(Debug, thiserror::Error)]
pub enum KeyError {
    /// Something else than pairs of hexadecimal digits.
    #[error("a signing key is written in pairs of hexadecimal digits")]
    NotHex,
    /// Too few of them.
    #[error("a signing key has at least {} hexadecimal digits, not {digits}", 2 * MIN_KEY_BYTES)]
    Short {
        /// How many there are.
        digits: usize,
    },
    /// The system gives no random bytes.
    #[error("no random bytes for a signing key: {0}")]
    Random(io::Error),
    /// The key file cannot be read or made.
    #[error("the signing key {}: {cause}", path.display())]
    File { path: PathBuf, cause: io::Error },
}

impl SigningKey {
    /// Reads a key from hexadecimal digits.
    ///
    /// # Errors
    /// [`KeyError::NotHex`], [`KeyError::Short`].
    pub fn from_hex(text: &str) -> Result<Self, KeyError> {
        let text = text.trim();
        let bytes = hex::decode(text).map_err(|_| KeyError::NotHex)?;
        if bytes.len() < MIN_KEY_BYTES {
            return Err(KeyError::Short { digits: text.len() });
        }
        Ok(Self(bytes))
    }

    pub fn bytes(&self) -> &[u8] {
        &self.0
    }

    fn random() -> io::Result<Self> {
        let mut bytes = [0; MIN_KEY_BYTES];
        getrandom::fill(&mut bytes).map_err(io::Error::other)?;
        Ok(Self(bytes.to_vec()))
    }
}

impl fmt::Debug for SigningKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "(not shown, {} bits)", 8 * self.0.len())
    }
}

impl KeySource {
    /// The key; the first start draws it and writes the file, which only its owner may read.
    ///
    /// # Errors
    /// [`KeyError`].
    pub fn load(&self) -> Result<SigningKey, KeyError> {
        let path = match self {
            Self::Given(key) => return Ok(key.clone()),
            Self::Ephemeral => return SigningKey::random().map_err(KeyError::Random),
            Self::File(path) => path,
        };
        let error = |cause| KeyError::File {
            path: path.clone(),
            cause,
        };
        match fs::read_to_string(path) {
            Ok(text) => SigningKey::from_hex(&text),
            Err(cause) if cause.kind() == io::ErrorKind::NotFound => {
                create_file(path).map_err(error)?;
                SigningKey::from_hex(&fs::read_to_string(path).map_err(error)?)
            }
            Err(cause) => Err(error(cause)),
        }
    }
}

/// Writes a new key beside the path and links it there whole; of two servers that start at once,
/// both then read the one that came first.
fn create_file(path: &Path) -> io::Result<()> {
    if let Some(folder) = path.parent() {
        fs::create_dir_all(folder)?;
    }
    let draft = path.with_extension(std::process::id().to_string());
    let mut file = OpenOptions::new()
        .write(true)
        .create_new(true)
        .mode(0o600)
        .open(&draft)?;
    writeln!(file, "{}", hex::encode(SigningKey::random()?.bytes()))?;
    file.sync_all()?;
    let linked = fs::hard_link(&draft, path);
    fs::remove_file(&draft)?;
    match linked {
        Err(cause) if cause.kind() != io::ErrorKind::AlreadyExists => Err(cause),
        _ => Ok(()),
    }
}

#[cfg(test)]
mod tests {
    use std::os::unix::fs::PermissionsExt;

    use super::*;

    #[test]
    fn a_key_is_drawn_once_and_only_its_owner_may_read_it() {
        let folder = tempfile::tempdir().unwrap();
        let source = KeySource::File(folder.path().join("signing.key"));
        let first = source.load().unwrap();
        assert_eq!(first.bytes().len(), 32);
        assert_eq!(source.load().unwrap().bytes(), first.bytes());
        let facts = fs::metadata(folder.path().join("signing.key")).unwrap();
        assert_eq!(facts.permissions().mode() & 0o777, 0o600);
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1);
    }

    #[test]
    fn a_short_key_is_refused() {
        let error = SigningKey::from_hex(&"ab".repeat(31)).unwrap_err();
        assert!(matches!(error, KeyError::Short { digits: 62 }));
        assert!(matches!(
            SigningKey::from_hex("no key"),
            Err(KeyError::NotHex)
        ));
    }
}
