//! TLS to the database (rustls): whose certificates are trusted.

use std::fmt;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use rustls::client::danger::{HandshakeSignatureValid, ServerCertVerified, ServerCertVerifier};
use rustls::client::{verify_server_cert_signed_by_trust_anchor, verify_server_name};
use rustls::crypto::{
    WebPkiSupportedAlgorithms, ring, verify_tls12_signature, verify_tls13_signature,
};
use rustls::pki_types::pem::PemObject;
use rustls::pki_types::{CertificateDer, ServerName, UnixTime};
use rustls::server::ParsedCertificate;
use rustls::{ClientConfig, DigitallySignedStruct, Error, RootCertStore, SignatureScheme};
use tokio_postgres_rustls::MakeRustlsConnect;

use crate::StoreError;

/// How the protocol is called within TLS; servers since PostgreSQL 17 look for it.
const PROTOCOL: &[u8] = b"postgresql";

/// Which authorities the system trusts, as libpq writes it.
const SYSTEM: &str = "system";

/// Whose certificates are accepted.
pub(crate) struct Trust(Option<Authorities>);

struct Authorities {
    roots: RootCertStore,
    /// The certificates themselves: one that is listed is accepted without an authority that signed it.
    listed: Vec<CertificateDer<'static>>,
    /// Whether the certificate must be of the host that was asked.
    checks_host: bool,
}

impl Trust {
    /// Whoever answers: the way is encrypted, and no more.
    pub(crate) fn anybody() -> Self {
        Self(None)
    }

    /// What the authorities of a file in PEM signed, or those of the system.
    pub(crate) fn certificates(
        file: Option<PathBuf>,
        checks_host: bool,
    ) -> Result<Self, StoreError> {
        let listed = match file {
            Some(file) if file != Path::new(SYSTEM) => read(&file)?,
            _ => rustls_native_certs::load_native_certs().certs,
        };
        let mut roots = RootCertStore::empty();
        let (usable, _) = roots.add_parsable_certificates(listed.iter().cloned());
        if usable == 0 {
            let none = "sslrootcert names no file, and the system trusts no authority";
            return Err(StoreError::Internal(none.to_owned()));
        }
        Ok(Self(Some(Authorities {
            roots,
            listed,
            checks_host,
        })))
    }
}

fn read(file: &Path) -> Result<Vec<CertificateDer<'static>>, StoreError> {
    let fault = |cause: &dyn fmt::Display| {
        StoreError::Internal(format!("sslrootcert {}: {cause}", file.display()))
    };
    let certificates: Result<Vec<_>, _> = CertificateDer::pem_file_iter(file)
        .map_err(|cause| fault(&cause))?
        .collect();
    let certificates = certificates.map_err(|cause| fault(&cause))?;
    match certificates.is_empty() {
        true => Err(fault(&"there is no certificate in it")),
        false => Ok(certificates),
    }
}

/// What opens encrypted connections.
pub(crate) fn connector(trust: Trust) -> Result<MakeRustlsConnect, StoreError> {
    let provider = ring::default_provider();
    let verifier = Verifier {
        trust,
        algorithms: provider.signature_verification_algorithms,
    };
    let mut config = ClientConfig::builder_with_provider(Arc::new(provider))
        .with_safe_default_protocol_versions()
        .map_err(|cause| StoreError::Internal(cause.to_string()))?
        .dangerous()
        .with_custom_certificate_verifier(Arc::new(verifier))
        .with_no_client_auth();
    config.alpn_protocols = vec![PROTOCOL.to_vec()];
    Ok(MakeRustlsConnect::new(config))
}

/// Checks certificates as libpq's `sslmode` asks, which rustls alone cannot: it knows no way to trust a
/// certificate whatever its host.
struct Verifier {
    trust: Trust,
    algorithms: WebPkiSupportedAlgorithms,
}

impl fmt::Debug for Verifier {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("Verifier")
    }
}

impl ServerCertVerifier for Verifier {
    fn verify_server_cert(
        &self,
        certificate: &CertificateDer<'_>,
        intermediates: &[CertificateDer<'_>],
        host: &ServerName<'_>,
        _ocsp_response: &[u8],
        now: UnixTime,
    ) -> Result<ServerCertVerified, Error> {
        let Trust(Some(authorities)) = &self.trust else {
            return Ok(ServerCertVerified::assertion());
        };
        let parsed = ParsedCertificate::try_from(certificate)?;
        if !authorities.listed.contains(certificate) {
            verify_server_cert_signed_by_trust_anchor(
                &parsed,
                &authorities.roots,
                intermediates,
                now,
                self.algorithms.all,
            )?;
        }
        if authorities.checks_host {
            verify_server_name(&parsed, host)?;
        }
        Ok(ServerCertVerified::assertion())
    }

    fn verify_tls12_signature(
        &self,
        message: &[u8],
        certificate: &CertificateDer<'_>,
        signature: &DigitallySignedStruct,
    ) -> Result<HandshakeSignatureValid, Error> {
        verify_tls12_signature(message, certificate, signature, &self.algorithms)
    }

    fn verify_tls13_signature(
        &self,
        message: &[u8],
        certificate: &CertificateDer<'_>,
        signature: &DigitallySignedStruct,
    ) -> Result<HandshakeSignatureValid, Error> {
        verify_tls13_signature(message, certificate, signature, &self.algorithms)
    }

    fn supported_verify_schemes(&self) -> Vec<SignatureScheme> {
        self.algorithms.supported_schemes()
    }
}
