### Les parts, et ce qui se trouve entre les éléments d’une énumération.

percentage = { $number } %
comma = { $first }, { $next }
and = { $first } et { $next }
or = { $first } ou { $next }
comma-or = { $first } ou { $next }
then = { $first }, puis { $next }
