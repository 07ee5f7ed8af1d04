//! The pages that explain each type of problem.

use actix_web::{HttpResponse, get, web};

use super::{HttpFault, Problem, ProblemKind};

/// Every kind of problem.
#[get("/problems")]
pub async fn list_problems() -> HttpResponse {
    let rows: String = ProblemKind::all()
        .map(|kind| {
            format!(
                "<li><a href=\"/problems/{0}\"><code>{0}</code></a> ({1}): {2}.</li>",
                kind.code,
                kind.status.as_u16(),
                (kind.title)()
            )
        })
        .collect();
    page("Problems", &format!("<ul>{rows}</ul>"))
}

/// One kind of problem.
#[get("/problems/{code}")]
pub async fn explain_problem(code: web::Path<String>) -> Result<HttpResponse, Problem> {
    let kind = ProblemKind::all()
        .find(|kind| kind.code == code.as_str())
        .ok_or_else(|| Problem::http(HttpFault::NotFound))?;
    let text = format!(
        "<p>{}.</p><p>Sent with status {}. The members <code>detail</code> and \
         <code>errors</code> say what was wrong in the case at hand.</p>\
         <p><a href=\"/problems\">All problems</a></p>",
        (kind.title)(),
        kind.status.as_u16()
    );
    Ok(page(kind.code, &text))
}

fn page(title: &str, text: &str) -> HttpResponse {
    HttpResponse::Ok()
        .content_type("text/html; charset=utf-8")
        .body(format!(
            "<!doctype html><html lang=\"en\"><meta charset=\"utf-8\">\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\
         <title>{title} · Tallyhost</title><main><h1>{title}</h1>{text}</main></html>"
        ))
}
