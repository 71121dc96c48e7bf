namespace RoutingRules.Checking.Facts.Documents;

/// <summary>Finds the name somebody probably meant.</summary>
internal static class NearName
{
    /// <summary>The most letters that may differ.</summary>
    public const int MaxDistance = 2;

    /// <summary>
    /// The candidate with the fewest letters to change, at most <see cref="MaxDistance"/> and fewer than the name has; ties go to the ordinally first.
    /// </summary>
    public static string? Find(string name, IEnumerable<string> candidates)
    {
        string? best = null;
        var bestDistance = Math.Min(MaxDistance + 1, name.Length);
        foreach (var candidate in candidates)
        {
            var distance = Distance(name, candidate);
            if (distance < bestDistance || (distance == bestDistance && best is not null && string.CompareOrdinal(candidate, best) < 0))
            {
                best = candidate;
                bestDistance = distance;
            }
        }

        return best;
    }

    /// <summary>How many letters must be put in, taken out or changed; a number above <see cref="MaxDistance"/> only says that it is more.</summary>
    public static int Distance(string from, string to)
    {
        if (Math.Abs(from.Length - to.Length) > MaxDistance)
        {
            return MaxDistance + 1;
        }

        var row = new int[to.Length + 1];
        for (var column = 0; column < row.Length; column++)
        {
            row[column] = column;
        }

        for (var i = 0; i < from.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i + 1;
            for (var k = 0; k < to.Length; k++)
            {
                var changed = diagonal + (from[i] == to[k] ? 0 : 1);
                diagonal = row[k + 1];
                row[k + 1] = Math.Min(changed, 1 + Math.Min(row[k], diagonal));
            }
        }

        return row[^1];
    }
}
