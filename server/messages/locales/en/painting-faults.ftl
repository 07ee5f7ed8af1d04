### What is wrong with painting rules, and why a claim is not taken.

painting-fault-painted-from = a model counts as painted from "coloured" or "finished" on
painting-fault-amount = a bonus is worth 1 to { $limit } points, not { $actual }
painting-fault-threshold = a threshold lies above 0 % and at most at 100 %, not at { $share }
painting-fault-tiers = tiers must rise: the one from { $share } does not
painting-fault-step = a bonus for newly finished points needs a step of at least 1 point
painting-fault-nobody-checks = bonuses need someone who may check the claims

claim-fault-models = a unit has 1 to { $most } models in the painting log, not { $models }
claim-fault-nothing-new = the log already shows these models so far
claim-fault-goes-back = a painted model stays painted; the log shows more
claim-fault-photo-used = this photo was already used for another claim
claim-fault-not-accepted =
    in this season a claim is not checked by { $checker ->
        [opponent] the opponent at the table
        [referee] a referee
       *[photo] a referee by photo
    }
claim-fault-no-photo = this claim has no photo
claim-fault-own-claim = nobody checks a claim of their own
claim-fault-decided = the claim was already decided
