//! Every address of the pages, in one table.

use actix_web::web::ServiceConfig;

use super::{
    accounts, assets, board, cards, catalogues, certificates, check, clubs, downloads, ending,
    games, home, invitations, lists, mine, next_season, nudges, painting, pairing_desk, paste,
    photos, players, points, print, record_consent, repairs, results_desk, rounds, seasons, setup,
    sheets, standings, statistics, trail, wall, weeks,
};

/// The pages, and what they load.
pub fn configure(config: &mut ServiceConfig) {
    config
        .service(assets::find_asset)
        .service(home::show_home)
        .service(home::found_club)
        .service(invitations::show_invitation)
        .service(invitations::use_invitation)
        .service(accounts::show_sign_in)
        .service(accounts::sign_in)
        .service(accounts::sign_out)
        .service(accounts::show_register)
        .service(accounts::register)
        .service(accounts::choose_language)
        .service(clubs::show_club)
        .service(clubs::invite)
        .service(clubs::change_member)
        .service(record_consent::show_record_consent)
        .service(record_consent::change_record_consent)
        .service(catalogues::show_catalogues)
        .service(catalogues::import_catalogue)
        .service(setup::show_setup)
        .service(setup::next_step)
        .service(seasons::show_season)
        .service(seasons::join)
        .service(seasons::start)
        .service(standings::show_standings)
        .service(players::show_player)
        .service(statistics::show_statistics)
        .service(games::show_game)
        .service(games::answer_slip)
        .service(results_desk::show_results_desk)
        .service(points::show_points)
        .service(points::adjust_points)
        .service(trail::show_trail)
        .service(downloads::show_downloads)
        .service(downloads::find_season_file)
        .service(downloads::find_season_archive)
        .service(ending::show_ending)
        .service(ending::end_season)
        .service(next_season::show_next_season)
        .service(next_season::create_season_from)
        .service(repairs::show_repair)
        .service(repairs::repair_round)
        .service(pairing_desk::show_desk)
        .service(pairing_desk::act_at_desk)
        .service(painting::show_painting)
        .service(painting::change_painting)
        .service(photos::show_photo)
        .service(print::show_print)
        .service(cards::show_cards)
        .service(certificates::show_certificate)
        .service(wall::show_wall)
        .service(weeks::show_week)
        .service(rounds::show_rounds)
        .service(sheets::show_sheet)
        .service(sheets::save_sheet)
        .service(mine::show_mine)
        .service(mine::tell_availability)
        .service(mine::withdraw)
        .service(lists::show_list)
        .service(lists::change_list)
        .service(check::check_form)
        .service(lists::show_receipt)
        .service(paste::show_paste)
        .service(paste::read_paste)
        .service(nudges::nudge_players)
        .service(board::show_board)
        .service(board::grant_leave)
        .service(board::open_lists);
}
