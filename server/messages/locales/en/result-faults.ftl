### Why a result slip does not change, and what a scenario cannot have counted.

slip-fault-not-reported = no result has been reported
slip-fault-own-report = the other side must answer this report
slip-fault-final = the result is final; only a ruling changes it
slip-fault-answered = no answer is awaited any more; only a ruling changes the result
slip-fault-disputed = the result is disputed; a referee decides
slip-fault-own-game = nobody rules on a game of their own

count-fault-in-leg = leg { $leg }: { $fault }
count-fault-unknown-item = the sheet counts no { $item }
count-fault-other-role = { $item } is counted for the other role
count-fault-computed = { $item } follows from the other side and is not typed
count-fault-over-most = { $item } can be at most { $limit }, not { $actual }
count-fault-over-army = { $item } counts points of an army of { $limit }, not { $actual }
count-fault-over-field = this side may start with at most { $limit } points, not { $actual }
count-fault-legs = legs of the sheet: { $limit }; legs counted: { $actual }
