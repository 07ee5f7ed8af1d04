//! The tables as diesel sees them; the migrations are the truth.

diesel::table! {
    accounts (account_id) {
        account_id -> Uuid,
        email -> Text,
        name -> Text,
        password_hash -> Text,
        minor -> Bool,
        guardian_consent -> Bool,
        registered_at -> Timestamptz,
    }
}

diesel::table! {
    sign_in_failures (email_digest) {
        email_digest -> Bytea,
        failures -> Int4,
        window_from -> Timestamptz,
    }
}

diesel::table! {
    sessions (session_id) {
        session_id -> Uuid,
        account_id -> Uuid,
        started_at -> Timestamptz,
        ends_at -> Timestamptz,
        ended_at -> Nullable<Timestamptz>,
        page_digest -> Nullable<Bytea>,
    }
}

diesel::table! {
    refresh_tokens (token_digest) {
        token_digest -> Bytea,
        session_id -> Uuid,
        issued_at -> Timestamptz,
        expires_at -> Timestamptz,
        spent_at -> Nullable<Timestamptz>,
    }
}

diesel::table! {
    clubs (club_id) {
        club_id -> Uuid,
        slug -> Text,
        name -> Text,
        founded_at -> Timestamptz,
    }
}

diesel::table! {
    memberships (club_id, account_id) {
        club_id -> Uuid,
        account_id -> Uuid,
        role -> Text,
        since -> Timestamptz,
    }
}

diesel::table! {
    invitations (club_id, invitation_id) {
        club_id -> Uuid,
        invitation_id -> Uuid,
        code_digest -> Bytea,
        role -> Text,
        uses_left -> Int4,
        created_by -> Uuid,
        created_at -> Timestamptz,
        expires_at -> Timestamptz,
    }
}

diesel::table! {
    idempotency_keys (account_id, key) {
        account_id -> Uuid,
        key -> Text,
        request_digest -> Bytea,
        answer -> Jsonb,
        created_at -> Timestamptz,
    }
}

diesel::table! {
    trail (club_id, entry_no) {
        club_id -> Uuid,
        entry_no -> Int8,
        season_id -> Nullable<Uuid>,
        happened_at -> Timestamptz,
        actor -> Nullable<Uuid>,
        act -> Text,
        facts -> Jsonb,
        open_to -> Text,
        previous -> Bytea,
        digest -> Bytea,
    }
}

diesel::table! {
    trail_heads (club_id) {
        club_id -> Uuid,
        entry_no -> Int8,
        digest -> Bytea,
    }
}

diesel::table! {
    catalogues (club_id, catalogue_id) {
        club_id -> Uuid,
        catalogue_id -> Uuid,
        name -> Text,
        created_at -> Timestamptz,
    }
}

diesel::table! {
    catalogue_versions (club_id, catalogue_id, number) {
        club_id -> Uuid,
        catalogue_id -> Uuid,
        number -> Int4,
        contents -> Jsonb,
        created_by -> Uuid,
        created_at -> Timestamptz,
    }
}

diesel::table! {
    seasons (club_id, season_id) {
        club_id -> Uuid,
        season_id -> Uuid,
        name -> Text,
        visibility -> Text,
        zone -> Text,
        state -> Text,
        catalogue_id -> Uuid,
        policy -> Jsonb,
        places -> Nullable<Int2>,
        version -> Int8,
        changed_at -> Timestamptz,
        created_at -> Timestamptz,
        started_at -> Nullable<Timestamptz>,
        ended_at -> Nullable<Timestamptz>,
        seed_commitment -> Nullable<Bytea>,
        moments_told_at -> Nullable<Timestamptz>,
    }
}

diesel::table! {
    season_seeds (club_id, season_id) {
        club_id -> Uuid,
        season_id -> Uuid,
        seed -> Bytea,
    }
}

diesel::table! {
    weeks (club_id, season_id, week_no) {
        club_id -> Uuid,
        season_id -> Uuid,
        week_no -> Int2,
        cap -> Int4,
        announce -> Timestamp,
        lists_due -> Timestamp,
        play_until -> Timestamp,
        announce_at -> Timestamptz,
        lists_due_at -> Timestamptz,
        play_until_at -> Timestamptz,
        grace_minutes -> Int4,
        catalogue_number -> Int4,
        sheet -> Nullable<Jsonb>,
        title_reveal -> Text,
        title_reveal_at -> Nullable<Timestamptz>,
        full_reveal -> Text,
        full_reveal_at -> Nullable<Timestamptz>,
        lists_opened_at -> Nullable<Timestamptz>,
        paired_at -> Nullable<Timestamptz>,
        closed_at -> Nullable<Timestamptz>,
    }
}

diesel::table! {
    nights (club_id, season_id, week_no, night) {
        club_id -> Uuid,
        season_id -> Uuid,
        week_no -> Int2,
        night -> Text,
        begins -> Timestamp,
        begins_at -> Timestamptz,
        tables -> Int2,
    }
}

diesel::table! {
    players (club_id, season_id, player_id) {
        club_id -> Uuid,
        season_id -> Uuid,
        player_id -> Uuid,
        account_id -> Uuid,
        handle -> Text,
        faction -> Text,
        household -> Nullable<Text>,
        nights -> Array<Text>,
        joined_week -> Int2,
        left_after_week -> Nullable<Int2>,
        joined_at -> Timestamptz,
        seat -> Nullable<Int2>,
        left_at -> Nullable<Timestamptz>,
    }
}

diesel::table! {
    availabilities (club_id, season_id, week_no, player_id) {
        club_id -> Uuid,
        season_id -> Uuid,
        week_no -> Int2,
        player_id -> Uuid,
        nights -> Array<Text>,
        told_at -> Timestamptz,
    }
}

diesel::table! {
    nudges (club_id, season_id, week_no, about, nudged_at) {
        club_id -> Uuid,
        season_id -> Uuid,
        week_no -> Int2,
        about -> Text,
        nudged_by -> Uuid,
        nudged_at -> Timestamptz,
    }
}

diesel::table! {
    lists (club_id, season_id, week_no, player_id) {
        club_id -> Uuid,
        season_id -> Uuid,
        week_no -> Int2,
        player_id -> Uuid,
        list_id -> Uuid,
        draft -> Nullable<Jsonb>,
        draft_revision -> Int4,
        sealed -> Nullable<Jsonb>,
        sealed_points -> Nullable<Int4>,
        catalogue_number -> Nullable<Int4>,
        salt -> Nullable<Bytea>,
        digest -> Nullable<Bytea>,
        sealed_at -> Nullable<Timestamptz>,
        late_minutes -> Nullable<Int4>,
        stands_in -> Bool,
    }
}

diesel::table! {
    late_leaves (club_id, season_id, week_no, player_id) {
        club_id -> Uuid,
        season_id -> Uuid,
        week_no -> Int2,
        player_id -> Uuid,
        reason -> Text,
        granted_by -> Uuid,
        granted_at -> Timestamptz,
    }
}

diesel::table! {
    rounds (club_id, season_id, round_id) {
        club_id -> Uuid,
        season_id -> Uuid,
        round_id -> Uuid,
        week_no -> Int2,
        round_no -> Int2,
        state -> Text,
        task -> Jsonb,
        proposal -> Jsonb,
        draw -> Bytea,
        proposed_by -> Uuid,
        proposed_at -> Timestamptz,
        published_by -> Nullable<Uuid>,
        published_at -> Nullable<Timestamptz>,
        version -> Int2,
        repair -> Nullable<Jsonb>,
    }
}

diesel::table! {
    games (club_id, season_id, game_id) {
        club_id -> Uuid,
        season_id -> Uuid,
        game_id -> Uuid,
        round_id -> Uuid,
        week_no -> Int2,
        round_no -> Int2,
        first -> Uuid,
        second -> Nullable<Uuid>,
        night -> Nullable<Text>,
        table_no -> Nullable<Int2>,
    }
}

diesel::table! {
    slips (club_id, season_id, game_id) {
        club_id -> Uuid,
        season_id -> Uuid,
        game_id -> Uuid,
        contents -> Jsonb,
        state -> Text,
        version -> Int4,
        confirm_due_at -> Nullable<Timestamptz>,
    }
}

diesel::table! {
    adjustments (club_id, season_id, ruling_id) {
        club_id -> Uuid,
        season_id -> Uuid,
        ruling_id -> Uuid,
        player_id -> Uuid,
        week_no -> Int2,
        amount -> Int4,
        reason -> Text,
        made_by -> Uuid,
        made_at -> Timestamptz,
    }
}

diesel::table! {
    painting_claims (club_id, season_id, claim_id) {
        club_id -> Uuid,
        season_id -> Uuid,
        claim_id -> Uuid,
        player_id -> Uuid,
        week_no -> Int2,
        unit -> Text,
        stages -> Jsonb,
        photo -> Nullable<Bytea>,
        claimed_at -> Timestamptz,
        state -> Text,
        checker -> Nullable<Text>,
        decided_by -> Nullable<Uuid>,
        decided_at -> Nullable<Timestamptz>,
        reason -> Nullable<Text>,
    }
}

diesel::table! {
    brought_units (club_id, season_id, player_id) {
        club_id -> Uuid,
        season_id -> Uuid,
        player_id -> Uuid,
        units -> Jsonb,
    }
}

diesel::table! {
    painting_photos (club_id, season_id, digest, player_id) {
        club_id -> Uuid,
        season_id -> Uuid,
        player_id -> Uuid,
        digest -> Bytea,
        likeness -> Int8,
        jpeg -> Bytea,
        uploaded_at -> Timestamptz,
    }
}

diesel::table! {
    frozen_tables (club_id, season_id, week_no, version) {
        club_id -> Uuid,
        season_id -> Uuid,
        week_no -> Int2,
        version -> Int8,
        act -> Text,
        contents -> Jsonb,
        frozen_at -> Timestamptz,
        whole -> Bool,
    }
}

diesel::table! {
    open_records (club_id, account_id) {
        club_id -> Uuid,
        account_id -> Uuid,
        record_id -> Uuid,
        agreed_at -> Timestamptz,
    }
}

diesel::allow_tables_to_appear_in_same_query!(accounts, clubs, memberships);
diesel::allow_tables_to_appear_in_same_query!(seasons, weeks);
diesel::allow_tables_to_appear_in_same_query!(games, slips);
diesel::allow_tables_to_appear_in_same_query!(lists, players);
diesel::allow_tables_to_appear_in_same_query!(clubs, seasons);
diesel::allow_tables_to_appear_in_same_query!(memberships, open_records, players, seasons);
