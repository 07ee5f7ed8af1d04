//! Extractors for a page of a season: the app, who asks, and the season as they see it.

use std::future::Future;
use std::ops::Deref;
use std::pin::Pin;

use actix_web::dev::Payload;
use actix_web::web::{Data, Path};
use actix_web::{Error, FromRequest, HttpRequest};
use app::{Actor, App, Viewer};
use league::keys::SeasonKey;
use messages::Texts;

use super::context::{SeasonContext, SeasonHeader, SeasonTab};
use crate::pages::frame::page_request::{Layout, PageRequest};
use crate::paths::SeasonPath;
use crate::problem::Problem;

/// Extractor: a page of a season. The path may go on behind the season.
pub struct SeasonPage {
    pub app: Data<App>,
    pub request: PageRequest,
    pub context: SeasonContext,
}

/// Extractor: a page of a season for somebody who is signed in. Whoever is not is sent to sign in before
/// the season is looked up, so that nobody reads 404 for a season that they may see.
pub struct SignedInSeasonPage {
    pub page: SeasonPage,
    pub actor: Actor,
}

type Parts = (Data<App>, PageRequest, Path<SeasonPath>);
type ExtractFuture<T> = Pin<Box<dyn Future<Output = Result<T, Error>>>>;

impl FromRequest for SeasonPage {
    type Error = Error;
    type Future = ExtractFuture<Self>;

    fn from_request(request: &HttpRequest, _: &mut Payload) -> Self::Future {
        let parts = Parts::extract(request);
        Box::pin(async move {
            let (app, request, path) = parts.await?;
            Ok(Self::load(app, request, path.key()).await?)
        })
    }
}

impl FromRequest for SignedInSeasonPage {
    type Error = Error;
    type Future = ExtractFuture<Self>;

    fn from_request(request: &HttpRequest, _: &mut Payload) -> Self::Future {
        let parts = Parts::extract(request);
        Box::pin(async move {
            let (app, request, path) = parts.await?;
            Ok(Self::load(app, request, path.key()).await?)
        })
    }
}

impl SeasonPage {
    /// For a form that comes back with its errors: it is loaded once the act was refused.
    ///
    /// # Errors
    /// 404 for a season that the reader may not see.
    pub async fn load(
        app: Data<App>,
        request: PageRequest,
        season: SeasonKey,
    ) -> Result<Self, Problem> {
        let context = SeasonContext::load(&app, request.viewer, season).await?;
        Ok(Self {
            app,
            request,
            context,
        })
    }

    pub fn viewer(&self) -> Viewer {
        self.request.viewer
    }

    pub fn key(&self) -> SeasonKey {
        self.context.season.key()
    }

    pub fn t(&self) -> Texts {
        self.request.t
    }

    pub fn layout(&self) -> Layout {
        self.request.layout()
    }

    pub fn header(&self, here: SeasonTab) -> SeasonHeader {
        self.context.header(self.t(), here)
    }
}

impl SignedInSeasonPage {
    /// As [`SeasonPage::load`].
    ///
    /// # Errors
    /// 401, then 404 for a season that the reader may not see.
    pub async fn load(
        app: Data<App>,
        request: PageRequest,
        season: SeasonKey,
    ) -> Result<Self, Problem> {
        let actor = request.actor()?;
        let page = SeasonPage::load(app, request, season).await?;
        Ok(Self { page, actor })
    }
}

impl Deref for SignedInSeasonPage {
    type Target = SeasonPage;

    fn deref(&self) -> &SeasonPage {
        &self.page
    }
}
