### Shares, and what stands between the things of a list.

percentage = { $number } %
comma = { $first }, { $next }
and = { $first } and { $next }
or = { $first } or { $next }
comma-or = { $first }, or { $next }
then = { $first }, then { $next }
