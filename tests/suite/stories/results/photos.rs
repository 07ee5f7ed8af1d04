//! Photos of painted models: only pixels are kept, for the club alone.

use image::{ImageFormat, guess_format, load_from_memory};
use reqwest::Method;
use serde_json::json;

use super::week::FirstWeek;
use crate::harness::{Actor, Answer, Claim, TakenIn, bytes_of, picture};

const PAIR: [&str; 2] = ["Oskrel", "Corvanel"];

fn send(week: &FirstWeek, actor: &Actor, bytes: &[u8]) -> Answer<TakenIn> {
    week.season().by(actor).send_photo(bytes)
}

fn claim(week: &FirstWeek, actor: &Actor, unit: &str, photo: &str) -> Answer<Claim> {
    week.week().by(actor).claim_with_photo(unit, 1, photo)
}

/// The trail as somebody reads it.
fn trail_of(week: &FirstWeek, reader: &Actor) -> String {
    let trail = week.season().by(reader).trail();
    trail.with_status(200).text()
}

#[test]
fn a_photo_with_its_place_is_served_upright_to_the_club_without_anything_but_pixels() {
    let week = FirstWeek::sealed(&PAIR);
    let oskrel = &week.players[0].actor;
    let told = with_exif(&bytes_of(&picture(3), ImageFormat::Jpeg));
    let sent = send(&week, oskrel, &told).with_status(201);
    let taken_in = sent.view();
    assert!(taken_in.caution.contains("no minors"));
    let location = sent.location(201);

    claim(&week, oskrel, "hedge-reeve-1", &taken_in.photo).expect(201);
    week.propose();
    let served = week.players[1].actor.get(&location).with_status(200);
    assert_eq!(served.header("content-type"), Some("image/jpeg"));
    assert_eq!(served.header("cache-control"), Some("private, no-store"));
    assert_eq!(guess_format(&served.body).unwrap(), ImageFormat::Jpeg);
    let upright = load_from_memory(&served.body).unwrap();
    assert_eq!((upright.width(), upright.height()), (30, 40));
    let text = served.text();
    assert!(
        !text.contains("Exif") && !text.contains("52.5200 N"),
        "{text}"
    );
    assert_eq!(
        week.stage
            .database
            .texts("SELECT count(*)::text FROM painting_photos"),
        ["1"]
    );
    let kept =
        "SELECT count(*)::text FROM painting_photos WHERE position('Exif'::bytea in jpeg) > 0";
    assert_eq!(week.stage.database.texts(kept), ["0"]);

    let stranger = week.stage.server.register("Stranger");
    for other in [week.stage.visitor(), stranger] {
        other.get(&location).refused(404, "not-found");
    }
}

#[test]
fn nobody_learns_from_a_photo_what_is_in_a_list_that_is_still_sealed() {
    let week = FirstWeek::sealed(&PAIR);
    let [oskrel, corvanel] = [&week.players[0].actor, &week.players[1].actor];
    let sent = send(&week, oskrel, &bytes_of(&picture(3), ImageFormat::Png));
    let sent = sent.with_status(201);
    let photo = sent.view().photo;
    let location = sent.location(201);
    claim(&week, oskrel, "hedge-reeve-1", &photo).expect(201);

    oskrel.get(&location).with_status(200);
    let others = [corvanel, &week.stage.owner];
    for other in others {
        other.get(&location).refused(404, "not-found");
        assert!(!trail_of(&week, other).contains(&photo));
    }
    let seen = trail_of(&week, corvanel);
    assert!(!seen.contains("claim_painting"), "{seen}");

    week.propose();
    for other in others {
        other.get(&location).with_status(200);
    }
}

#[test]
fn a_referee_looks_at_a_photo_and_a_photo_stands_behind_one_claim_only() {
    let week = FirstWeek::sealed(&PAIR);
    let [oskrel, corvanel] = [&week.players[0].actor, &week.players[1].actor];
    let png = bytes_of(&picture(5), ImageFormat::Png);
    let photo = send(&week, oskrel, &png).expect(201).photo;
    assert_eq!(
        send(&week, oskrel, &png).expect(201).photo,
        photo,
        "sent twice, kept once"
    );
    claim(&week, corvanel, "tally-novice-1", &photo).refused(422, "validation");
    let made = claim(&week, oskrel, "hedge-reeve-1", &photo).expect(201);
    assert_eq!(made.photo.as_ref(), Some(&photo));
    claim(&week, oskrel, "orchard-levy-1", &photo).refused(409, "photo-already-used");
    let anew = bytes_of(&picture(5), ImageFormat::WebP);
    send(&week, oskrel, &anew).refused(409, "photo-already-used");

    week.propose();
    let referee = week.stage.appoint("Ilkamar", "referee");
    let verified = week.season().by(&referee).verify_claim(&made.id);
    assert_eq!(verified.expect(200).checker.as_deref(), Some("photo"));
}

#[test]
fn a_picture_like_another_players_is_taken_in_and_only_those_who_judge_are_told() {
    let week = FirstWeek::sealed(&PAIR);
    let [oskrel, corvanel] = [&week.players[0].actor, &week.players[1].actor];
    let first = send(&week, oskrel, &bytes_of(&picture(9), ImageFormat::Png)).expect(201);
    let copy = bytes_of(&picture(9).brighten(4), ImageFormat::Jpeg);
    let second = send(&week, corvanel, &copy).expect(201);
    assert_ne!(first.photo, second.photo);
    let first = claim(&week, oskrel, "hedge-reeve-1", &first.photo).expect(201);
    let second = claim(&week, corvanel, "tally-novice-1", &second.photo).expect(201);

    let trail = week.season().trail().expect(200);
    let alike = |claim: &Claim| {
        let mut entries = trail.iter();
        let entry = entries.find(|entry| entry.fact("claim") == claim.id.as_str());
        entry.unwrap().fact("looks_like").clone()
    };
    assert_eq!(alike(&first), json!([]));
    assert_eq!(alike(&second), json!([first.id]));
    let seen = trail_of(&week, corvanel);
    assert!(!seen.contains("looks_like"), "{seen}");
}

#[test]
fn what_is_no_picture_or_too_large_or_torn_is_refused_by_name() {
    let week = FirstWeek::sealed(&PAIR);
    let oskrel = &week.players[0].actor;
    for text in [
        "<svg xmlns='http://www.w3.org/2000/svg'/>",
        "<html><script>",
        "",
    ] {
        send(&week, oskrel, text.as_bytes()).refused(415, "unsupported-media-type");
        for format in [ImageFormat::Jpeg, ImageFormat::Png, ImageFormat::WebP] {
            let payload = format!("{text}PK\u{3}\u{4}");
            let both = [bytes_of(&picture(3), format), payload.into_bytes()].concat();
            send(&week, oskrel, &both).refused(415, "unsupported-media-type");
        }
    }
    let wide = send(&week, oskrel, &png_header(60_000, 60_000)).refused(422, "image-too-large");
    assert_eq!(
        (wide.limit(), wide.actual()),
        (&json!(12_000), &json!(60_000))
    );
    let many = send(&week, oskrel, &png_header(8_000, 5_001)).refused(422, "image-too-large");
    assert_eq!(
        (many.limit(), many.actual()),
        (&json!(40_000_000), &json!(40_008_000))
    );
    let moving = animated(&bytes_of(&picture(3), ImageFormat::Png));
    send(&week, oskrel, &moving).refused(422, "image-too-large");
    let mut heavy = bytes_of(&picture(3), ImageFormat::Jpeg);
    heavy.resize(10 * 1024 * 1024 + 1, 0);
    send(&week, oskrel, &heavy).refused(413, "payload-too-large");
    for format in [ImageFormat::Jpeg, ImageFormat::Png, ImageFormat::WebP] {
        let whole = bytes_of(&picture(3), format);
        let torn = &whole[..whole.len() * 3 / 4];
        send(&week, oskrel, torn).refused(422, "invalid-image");
    }
    assert_eq!(
        week.stage
            .database
            .texts("SELECT count(*)::text FROM painting_photos"),
        ["0"]
    );
}

#[test]
fn a_minors_account_sends_none_and_everybody_takes_their_own_away() {
    let week = FirstWeek::sealed(&PAIR);
    let [oskrel, corvanel] = [&week.players[0].actor, &week.players[1].actor];
    week.stage
        .database
        .run("UPDATE accounts SET minor = true, guardian_consent = true WHERE name = 'Corvanel'");
    let png = bytes_of(&picture(5), ImageFormat::Png);
    send(&week, corvanel, &png).refused(403, "forbidden");
    let location = send(&week, oskrel, &png).location(201);
    let delete = |actor: &Actor| actor.ask(Method::DELETE, &location, |request| request);
    delete(corvanel).refused(404, "not-found");
    delete(oskrel).expect(204);
    oskrel.get(&location).refused(404, "not-found");
    let again = send(&week, oskrel, &png).location(201);
    assert_eq!(again, location);
    delete(&week.stage.owner).expect(204);
}

#[test]
fn a_player_has_so_many_photos_in_a_season_and_no_more() {
    let week = FirstWeek::sealed(&PAIR);
    let oskrel = &week.players[0].actor;
    let own = format!(
        "INSERT INTO painting_photos SELECT club_id, season_id, player_id, \
             sha256(n::text::bytea), n, '\\x00', league_clock() \
         FROM players, generate_series(1, 60) n WHERE player_id = '{}'",
        week.players[0].id
    );
    week.stage.database.run(&own);
    let png = bytes_of(&picture(5), ImageFormat::Png);
    let refused = send(&week, oskrel, &png).refused(409, "too-many-photos");
    assert_eq!(
        (refused.limit(), refused.actual()),
        (&json!(60), &json!(60))
    );
    send(&week, &week.players[1].actor, &png).expect(201);
    let first = "DELETE FROM painting_photos WHERE likeness = 1";
    week.stage.database.run(first);
    send(&week, oskrel, &png).expect(201);
}

/// With a segment that says "turned to the right" and names a place.
fn with_exif(jpeg: &[u8]) -> Vec<u8> {
    let mut exif = b"Exif\0\0II*\0\x08\0\0\0\x01\0".to_vec();
    exif.extend(b"\x12\x01\x03\0\x01\0\0\0\x06\0\0\0\0\0\0\x0052.5200 N");
    let length = u16::try_from(exif.len() + 2).unwrap().to_be_bytes();
    [&jpeg[..2], b"\xFF\xE1", &length, &exif, &jpeg[2..]].concat()
}

/// The beginning of a picture of that size, and nothing of its pixels.
fn png_header(width: u32, height: u32) -> Vec<u8> {
    let size = [width.to_be_bytes(), height.to_be_bytes()].concat();
    let header = chunk(b"IHDR", &[&size[..], &[8, 2, 0, 0, 0]].concat());
    [
        &b"\x89PNG\r\n\x1A\n"[..],
        &header,
        &chunk(b"IDAT", &[0; 64]),
    ]
    .concat()
}

/// A picture that says of itself that it has a thousand frames.
fn animated(png: &[u8]) -> Vec<u8> {
    let frames = [1000_u32.to_be_bytes(), 0_u32.to_be_bytes()].concat();
    [&png[..33], &chunk(b"acTL", &frames), &png[33..]].concat()
}

/// A chunk with its checksum (PNG, third edition, section 5.3 and annex D).
fn chunk(kind: &[u8; 4], contents: &[u8]) -> Vec<u8> {
    let named = [&kind[..], contents].concat();
    let step = |sum: u32| {
        if sum & 1 == 1 {
            0xEDB8_8320 ^ (sum >> 1)
        } else {
            sum >> 1
        }
    };
    let add = |sum: u32, byte: &u8| (0..8).fold(sum ^ u32::from(*byte), |sum, _| step(sum));
    let sum = !named.iter().fold(u32::MAX, add);
    let length = u32::try_from(contents.len()).unwrap();
    [&length.to_be_bytes()[..], &named, &sum.to_be_bytes()].concat()
}
