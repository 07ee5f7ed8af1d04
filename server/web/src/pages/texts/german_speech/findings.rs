//! Findings of a list check in German, by their stable codes.

use league::lists::Finding;

use crate::pages::texts::speech::Named;

/// The finding as a sentence; `None` for a code that is not known here.
pub fn sentence(finding: &Finding, named: Named<'_>) -> Option<String> {
    let about = finding.about.as_deref().unwrap_or_default();
    let words = about.replace('-', " ");
    let names: Vec<String> = finding.entries.iter().filter_map(named).collect();
    let all = names.join(", ");
    let one = names.first().map_or("Die Einheit", String::as_str);
    let numbers = finding.measured;
    let (limit, actual, difference) = numbers.map_or((0, 0, 0), |numbers| {
        (numbers.limit, numbers.actual, numbers.difference())
    });
    let bound = if actual < limit {
        "mindestens"
    } else {
        "höchstens"
    };
    Some(match finding.code {
        "list.over-cap" => {
            format!("Die Liste hat {actual} Punkte, {difference} über der Punktgrenze von {limit}.")
        }
        "list.minimum-spend" => {
            format!(
                "Die Liste hat {actual} Punkte, {difference} unter dem Mindestwert von {limit}."
            )
        }
        "list.largest-unit" => format!(
            "{one} kostet {actual} Punkte; eine einzelne Einheit darf höchstens {limit} kosten."
        ),
        "list.kind-count" => {
            format!("Die Liste hat {actual} der Art {words}; diese Woche sind es {bound} {limit}.")
        }
        "list.kind-share" => format!(
            "Die Liste gibt {actual} Punkte für die Art {words} aus; diese Woche sind es {bound} {limit}."
        ),
        "list.copies" => {
            format!("{one} ist {actual}-mal dabei; diese Woche höchstens {limit}-mal.")
        }
        "list.banned-keyword" => {
            format!("{one} hat das Stichwort {words}, das diese Woche nicht erlaubt ist.")
        }
        "list.army-size" => {
            format!(
                "Die Liste hat {actual}; diese Woche sind es {bound} {limit} Einheiten oder Modelle."
            )
        }
        "list.faction-lock" => {
            format!("Die Liste ist von einer anderen Fraktion als der genannten, {words}.")
        }
        "list.carry-over" => format!(
            "{actual} Punkte der Vorwoche kommen wieder; mindestens {limit} müssen es.{}",
            missing(&all)
        ),
        "list.swap" => format!(
            "{actual} Punkte der Vorwoche gehen; höchstens {limit} dürfen es.{}",
            missing(&all)
        ),
        "list.shrunk" => {
            format!("{one} hatte in der Vorwoche {limit} Modelle und hat jetzt {actual}.")
        }
        "list.option-dropped" => {
            format!("{one} hatte in der Vorwoche {words} und muss es behalten.")
        }
        "list.new-points" => {
            format!("{actual} Punkte sind neu seit der Vorwoche; höchstens {limit} dürfen es sein.")
        }
        "list.new-units" => format!(
            "{actual} Einheiten sind seit der Vorwoche neu oder gewachsen; mindestens {limit} müssen es sein."
        ),
        "list.painted-share" => {
            format!("{actual} Punkte sind bemalt; mindestens {limit} müssen es sein.")
        }
        "list.unknown-faction" => format!("Der Katalog kennt keine Fraktion „{about}“."),
        "list.unknown-unit" => format!("Die Fraktion hat keine Einheit „{about}“."),
        "list.unit-size" => {
            format!("{one} kann nicht {actual} Modelle haben; am nächsten liegen {limit}.")
        }
        "list.unknown-option" => format!("{one} hat keine Option „{about}“."),
        "list.option-limit" => {
            format!("{one} nimmt {words} {actual}-mal; höchstens {limit}-mal ist erlaubt.")
        }
        "list.option-group" => {
            format!("{one} darf nur eine dieser Optionen nehmen, nicht {actual}: {words}.")
        }
        "list.joins" => format!("{one} kann sich dieser Einheit nicht anschließen."),
        "list.most-per-army" => {
            format!("{one} ist {actual}-mal dabei; eine Armee darf sie {limit}-mal haben.")
        }
        "list.stated-points" => {
            format!("Angegeben sind {actual} Punkte; nach dem Katalog sind es {limit}.")
        }
        "list.stated-total" => {
            format!("Als Summe sind {actual} Punkte angegeben; nach dem Katalog sind es {limit}.")
        }
        "list.stated-faction" => format!("Der Text nennt eine andere Fraktion, {words}."),
        _ => return None,
    })
}

fn missing(names: &str) -> String {
    if names.is_empty() {
        String::new()
    } else {
        format!(" Ganz oder teilweise fort: {names}.")
    }
}
