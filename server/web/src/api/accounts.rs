//! API: accounts.

use actix_web::web::Data;
use actix_web::{get, post, web};
use app::App;
use app::accounts::{AccountOverview, RegisterAccount};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use uuid::Uuid;

use super::clubs::ClubView;
use crate::authentication::SignedIn;
use crate::body::Json;
use crate::problem::ProblemResponses;
use crate::response::{Accepted, ApiResult};

/// What it takes to register.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AccountBody {
    /// E-mail address.
    #[schema(example = "wennable@example.org")]
    email: String,
    /// Shown to your clubs; a handle will do.
    #[schema(example = "Wennable", min_length = 1, max_length = 60)]
    name: String,
    /// At least 15 characters; any characters.
    #[schema(
        example = "six lanterns on the ford",
        min_length = 15,
        max_length = 256
    )]
    password: String,
    /// Under the age at which you may agree alone where you live.
    #[serde(default)]
    minor: bool,
    /// A parent or guardian agrees.
    #[serde(default)]
    guardian_consent: bool,
}

/// Your account.
#[derive(Serialize, ToSchema)]
pub struct AccountView {
    /// Identity.
    id: Uuid,
    /// E-mail address.
    email: String,
    /// Name.
    name: String,
    /// Under age.
    minor: bool,
    /// Your clubs, by name.
    clubs: Vec<ClubView>,
}

impl From<AccountOverview> for AccountView {
    fn from(overview: AccountOverview) -> Self {
        let account = overview.account;
        Self {
            id: account.id.0,
            email: account.email,
            name: account.name,
            minor: account.minor,
            clubs: overview
                .clubs
                .into_iter()
                .map(|(club, role)| ClubView::new(club, Some(role)))
                .collect(),
        }
    }
}

/// Register. The answer is the same whether or not the address has an account.
#[utoipa::path(tag = "accounts", security(()), responses((status = 202, description = "Taken in: sign in now"), ProblemResponses))]
#[post("/accounts")]
pub async fn register_account(app: Data<App>, body: Json<AccountBody>) -> ApiResult<Accepted> {
    let AccountBody {
        email,
        name,
        password,
        minor,
        guardian_consent,
    } = body.0;
    let command = RegisterAccount {
        email,
        name,
        password,
        minor,
        guardian_consent,
    };
    app::accounts::register_account(&app, command).await?;
    Ok(Accepted)
}

/// Your account and your clubs.
#[utoipa::path(tag = "accounts", responses((status = 200, body = AccountView), ProblemResponses))]
#[get("/accounts/me")]
pub async fn find_account(app: Data<App>, who: SignedIn) -> ApiResult<web::Json<AccountView>> {
    Ok(web::Json(
        app::accounts::find_account(&app, who.0).await?.into(),
    ))
}
