//! A person's record over the public seasons of a club, as far as the person agrees to it.

use actix_web::HttpRequest;
use actix_web::web::{Data, Path};
use app::Refusal;
use app::clubs::list_record_places;

use crate::addresses::OneRecord;
use crate::encoding::Encoding;
use crate::format::Format;
use crate::once::answer_once;
use crate::reads::Answer;
use crate::resource::{Resource, Wanted, write};
use crate::sheets::{Place, Record};
use crate::shelf::{Key, Shelf};

/// A player's record over the seasons of a club, where the player agrees that everybody reads it.
#[utoipa::path(get, path = "/public/clubs/{club}/records/{record}", tag = "public", security(()), params(OneRecord), responses(
    (status = 200, description = "The places in every public season, the newest first", content(
        (Record = "application/json", example = json!({
            "games": {"won": 9, "drawn": 2, "lost": 5, "unplayed": 1},
            "places": [{
                "season": "0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e63", "name": "Ford under Lamps", "is_final": true,
                "as_of": 8, "player": "0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e60", "handle": "Corvanel",
                "faction": "sodwether-moot", "rank": 1, "of": 18, "total": 86,
                "record": {"won": 6, "drawn": 1, "lost": 1, "unplayed": 0}
            }]
        })),
        (String = "text/csv", example = "season,name,is_final,as_of,player,faction,rank,of,total,won,drawn,lost,unplayed\r\n0192d3f0-7a51-7c31-9d0e-5b1f8a2c4e63,Ford under Lamps,true,8,Corvanel,sodwether-moot,1,18,86,6,1,1,0\r\n")
    )),
    (status = 304, description = "Not changed")))]
pub async fn find_public_record(
    shelf: Data<Shelf>,
    path: Path<OneRecord>,
    request: HttpRequest,
) -> Answer {
    let format = Format::of(&path.ending, &request)?;
    let mut places = Vec::new();
    for (season, player) in list_record_places(shelf.desk(), path.club(), path.record).await? {
        let place = place(&shelf, (path.club(), season), Resource::Place(player)).await?;
        places.extend(place);
    }
    let body = write(&Record::of(places), format)?;
    Ok(answer_once(&request, format, body))
}

/// From the season's own page, which is as fresh as its table.
async fn place(shelf: &Shelf, key: Key, resource: Resource) -> Result<Option<Place>, Refusal> {
    let wanted = Wanted {
        resource,
        format: Format::Json,
    };
    match shelf.page(key, wanted).await {
        Ok((_, page)) => {
            let body = &page.read(Encoding::Identity, shelf.counts()).bytes;
            let place = serde_json::from_slice(body);
            place
                .map(Some)
                .map_err(|cause| Refusal::Broken(cause.to_string()))
        }
        // Left before the first week, or hidden since we asked.
        Err(Refusal::NotFound) => Ok(None),
        Err(refusal) => Err(refusal),
    }
}
