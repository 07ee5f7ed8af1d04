use super::window::{Size, Window};
use crate::harness::Stage;

#[test]
fn people_are_invited_by_link_or_code_get_a_role_and_leave() {
    let stage = Stage::draft();
    let club = &stage.club;
    let owner = Window::of(&stage.server, "Wennable", Size::Laptop);
    owner.go(&club.page(""));
    owner.fill("For how many people", "1");
    owner.press("Make a code");
    owner.reads("It is shown only now");
    owner.look("invitation-made");
    let link = owner.value("The same as a link");
    let (_, path) = link.split_once("/invitations").unwrap();
    let path = format!("/invitations{path}");

    let guest = Window::open(&stage.server, Size::Phone);
    guest.go(&path);
    guest.reads("No account yet?");
    guest.follow_in_main("Register");
    guest.fill("Name that clubs see", "Tamselle");
    guest.fill("E-mail address", "tamselle@example.org");
    guest.fill("Password", "six lanterns on the ford");
    guest.press("Register");
    guest.reads("You can sign in now.");
    guest.fill("E-mail address", "tamselle@example.org");
    guest.fill("Password", "six lanterns on the ford");
    guest.press("Sign in");
    guest.reads("Somebody gave you this code");
    guest.look("invitation-followed");
    guest.resize(Size::Phone);
    guest.press("Join");
    guest.reads("Lamplit Ford gaming circle");
    guest.look("club-joined");

    stage.server.register("Lumeth");
    let late = Window::of(&stage.server, "Lumeth", Size::Phone);
    late.fill("Invitation code", path.rsplit('=').next().unwrap());
    late.press("Join");
    late.reads("This code is unknown, used up or out of date.");
    late.look("invitation-used-up");

    owner.resize(Size::Laptop);
    owner.go(&club.page(""));
    owner.unfold("Role of Tamselle");
    owner.choose("Change role", "referee");
    owner.look("member-unfolded");
    owner.resize(Size::Laptop);
    owner.press("Save");
    owner.reads("referee");
    guest.go(&club.page(""));
    guest.reads("referee");
    owner.unfold("Role of Tamselle");
    owner.press("Remove");
    assert!(!owner.text().contains("Tamselle"));
}
