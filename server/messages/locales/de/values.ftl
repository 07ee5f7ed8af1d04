### Anteile, und was zwischen den Dingen einer Aufzählung steht.

percentage = { $number } %
comma = { $first }, { $next }
and = { $first } und { $next }
or = { $first } oder { $next }
comma-or = { $first } oder { $next }
then = { $first }, dann { $next }
