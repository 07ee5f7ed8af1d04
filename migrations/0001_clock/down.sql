drop function league_clock();
