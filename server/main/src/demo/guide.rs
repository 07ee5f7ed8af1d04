//! The text that is printed once the demo is loaded: accounts and things to try.

use tokio_postgres::{Client, Error, Row};

use super::data::{CLUB, PASSWORD};
use crate::cli::CommandError;

const SEASON: &str = "
    select '/clubs/' || club_id || '/seasons/' || season_id
    from seasons join clubs using (club_id) where clubs.slug = $1
    order by seasons.created_at limit 1";

const PEOPLE: &str = "
    select accounts.email || ' (' || case memberships.role
        when 'owner' then 'owner and organiser, plays too'
        when 'referee' then 'referee, plays too'
        else 'player' end || ')'
    from memberships join accounts using (account_id) join clubs using (club_id)
    where clubs.slug = $1
    order by memberships.role = 'player', memberships.role <> 'owner', accounts.email";

const OPEN_GAMES: &str = "
    select 'game ' || games.game_id || ': ' || first.handle || ' against ' || second.handle
        || case when slips.state = 'reported' then ', reported, waits for an answer'
            else ', not reported yet' end
    from games join clubs using (club_id)
    left join slips using (club_id, season_id, game_id)
    join players first on first.player_id = games.first
    join players second on second.player_id = games.second
    where clubs.slug = $1 and coalesce(slips.state, 'awaited') in ('awaited', 'reported')
    order by slips.state";

const WITHOUT_LIST: &str = "
    select string_agg(handle, ', ' order by handle) from players join clubs using (club_id)
    where clubs.slug = $1 and left_after_week is null and not exists (
        select from lists where lists.player_id = players.player_id and lists.week_no = 6
    )";

/// Where to look, accounts and things to try, as the database has them now, at a server at `address`.
///
/// # Errors
/// Those of the database.
pub async fn guide(url: &str, address: &str) -> Result<String, CommandError> {
    let client = store::connect_client(url).await?;
    let season = one(&client, SEASON).await?;
    let people = lines(&client, PEOPLE).await?;
    let games = lines(&client, OPEN_GAMES).await?;
    let without_list = one(&client, WITHOUT_LIST).await?;
    Ok(format!(
        "
Open in a browser:  {address}{season}
Sign in as:         wennable@example.org (the organiser), password: {PASSWORD}

The Lamplit Ford gaming circle plays Quernlight Reckoning: four weeks are played and closed, week 5
is being played, lists for week 6 come in. Every name is invented. Everybody has the same password:
{people}
To try:
  read the standings, and the ledger behind each row
  hand in a list for week 6; it is missing from {without_list}
  report a result, confirm, dispute or rule on one:
{games}
The season in the API:  {address}/api/v1{season}
Ctrl-C stops the server; the data stays.
"
    ))
}

async fn one(client: &Client, query: &str) -> Result<String, Error> {
    let row = client.query_opt(query, &[&CLUB]).await?;
    let text = row
        .map(|row| row.try_get::<_, Option<String>>(0))
        .transpose()?;
    Ok(text.flatten().unwrap_or_default())
}

async fn lines(client: &Client, query: &str) -> Result<String, Error> {
    let rows = client.query(query, &[&CLUB]).await?;
    let line = |row: &Row| Ok(format!("  {}\n", row.try_get::<_, &str>(0)?));
    rows.iter().map(line).collect()
}
