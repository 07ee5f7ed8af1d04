//! API: sessions: sign in, refresh, sign out.

use actix_web::web::Data;
use actix_web::{delete, post, web};
use app::App;
use app::accounts::{SignIn, Tokens};
use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::authentication::SignedIn;
use crate::body::Json;
use crate::problem::ProblemResponses;
use crate::response::{ApiResult, NoContent};

/// What it takes to sign in.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SessionBody {
    /// E-mail address.
    #[schema(example = "wennable@example.org")]
    email: String,
    /// Password.
    #[schema(example = "six lanterns on the ford")]
    password: String,
}

/// A refresh token to be spent.
#[derive(Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct RefreshBody {
    /// The token of the last answer.
    refresh_token: String,
}

/// A pair of tokens.
#[derive(Serialize, ToSchema)]
pub struct TokensView {
    /// Send it as `Authorization: Bearer …`.
    access_token: String,
    /// Always `Bearer`.
    token_type: &'static str,
    /// The access token works until then.
    access_until: DateTime<Utc>,
    /// For the next pair; works once.
    refresh_token: String,
    /// The refresh token works until then.
    refresh_until: DateTime<Utc>,
}

impl From<Tokens> for TokensView {
    fn from(tokens: Tokens) -> Self {
        Self {
            access_token: tokens.access,
            token_type: "Bearer",
            access_until: tokens.access_until,
            refresh_token: tokens.refresh,
            refresh_until: tokens.refresh_until,
        }
    }
}

/// Sign in.
#[utoipa::path(tag = "accounts", security(()), responses((status = 200, body = TokensView), ProblemResponses))]
#[post("/sessions")]
pub async fn sign_in(app: Data<App>, body: Json<SessionBody>) -> ApiResult<web::Json<TokensView>> {
    let SessionBody { email, password } = body.0;
    Ok(web::Json(
        app::accounts::sign_in(&app, SignIn { email, password })
            .await?
            .into(),
    ))
}

/// Get the next pair of tokens. Using a refresh token twice ends the session.
#[utoipa::path(tag = "accounts", security(()), responses((status = 200, body = TokensView), ProblemResponses))]
#[post("/sessions/refresh")]
pub async fn refresh_session(
    app: Data<App>,
    body: Json<RefreshBody>,
) -> ApiResult<web::Json<TokensView>> {
    let tokens = app::accounts::refresh_session(&app, &body.0.refresh_token).await?;
    Ok(web::Json(tokens.into()))
}

/// Sign out: this session's tokens stop working at once.
#[utoipa::path(tag = "accounts", responses((status = 204, description = "Signed out"), ProblemResponses))]
#[delete("/sessions/current")]
pub async fn sign_out(app: Data<App>, who: SignedIn) -> ApiResult<NoContent> {
    app::accounts::sign_out(&app, who.0).await?;
    Ok(NoContent)
}
