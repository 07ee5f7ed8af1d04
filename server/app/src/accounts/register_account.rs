//! Registering an account: anybody may. The answer never tells whether the address was known.

use league::ids::AccountId;
use messages::{accounts, refusals};
use store::accounts::Account;
use uuid::Uuid;

use super::password;
use crate::{App, Reason, Refusal, user_text};

/// What somebody types to register.
#[derive(Clone, Debug)]
pub struct RegisterAccount {
    pub email: String,
    /// Name shown to clubs; a handle will do.
    pub name: String,
    pub password: String,
    /// Under the age at which local law lets a person agree alone.
    pub minor: bool,
    /// A parent or guardian agrees; needed for a minor.
    pub guardian_consent: bool,
}

/// Makes the account, or quietly does nothing when the address has one.
///
/// # Errors
/// [`Reason::Validation`] for the address, [`Reason::InvalidName`], the reasons of passwords,
/// [`Reason::GuardianConsentRequired`].
pub async fn register_account(app: &App, command: RegisterAccount) -> Result<(), Refusal> {
    let email = parse_email(&command.email)?;
    let name = user_text::parse_name(&command.name, "/name", refusals::name_fault)?;
    let mut own = vec![name.to_string(), email.clone()];
    own.extend(email.split('@').map(str::to_owned));
    password::must_be_acceptable(app, &command.password, own).await?;
    if command.minor && !command.guardian_consent {
        return Err(Refusal::fault(
            Reason::GuardianConsentRequired,
            "/guardian_consent",
            accounts::guardian_needed(),
        ));
    }
    let password_hash = password::hash(app, command.password).await?;
    app.write(async |mut tx| {
        let account = Account {
            id: AccountId(Uuid::now_v7()),
            email: email.clone(),
            name: name.to_string(),
            password_hash: password_hash.clone(),
            minor: command.minor,
            guardian_consent: command.guardian_consent,
            registered_at: store::clock::now(&tx).await?,
        };
        store::accounts::create_unless_known(&mut tx, account).await?;
        Ok(tx.commit(()))
    })
    .await
}

/// The address in the one form it is compared in. Only delivery proves that an address works; here
/// it must merely look like one.
pub(super) fn parse_email(text: &str) -> Result<String, Refusal> {
    let text = text.trim().to_lowercase();
    let plausible = text.len() <= 254
        && !text.chars().any(|c| c.is_whitespace() || c.is_control())
        && text.split_once('@').is_some_and(|(local, domain)| {
            !local.is_empty() && !domain.contains('@') && domain.split('.').all(|p| !p.is_empty())
        });
    plausible
        .then_some(text)
        .ok_or_else(|| Refusal::fault(Reason::Validation, "/email", accounts::not_an_email()))
}
