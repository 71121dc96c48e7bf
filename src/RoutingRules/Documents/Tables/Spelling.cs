namespace RoutingRules.Documents.Tables;

/// <summary>Finds the word that was probably meant.</summary>
internal static class Spelling
{
    private const int MaxEdits = 2;
    private const int MaxLength = 64;

    /// <summary>Words for sides; what is on another side is never meant, whatever the spelling.</summary>
    private static readonly string[][] Sides =
    [
        ["l", "left"],
        ["r", "right"],
        ["sl", "hr"],
        ["sr", "hl"],
    ];

    /// <summary>The first of the closest words: at most two edits away, closer than the whole word is long, and of no other side; null for none.</summary>
    public static string? Nearest(string word, IEnumerable<string> known)
    {
        if (word.Length > MaxLength)
        {
            return null;
        }

        string? nearest = null;
        var best = Math.Min(MaxEdits, word.Length - 1) + 1;
        foreach (var candidate in known)
        {
            var edits = Edits(word, candidate);
            if (edits < best && !AreOnOtherSides(word, candidate))
            {
                best = edits;
                nearest = candidate;
            }
        }

        return nearest;
    }

    private static bool AreOnOtherSides(string left, string right) => SideOf(left) is >= 0 and var one && SideOf(right) is >= 0 and var other && one != other;

    /// <summary>The side that a part of a word names; -1 for none.</summary>
    private static int SideOf(string word) =>
        Array.FindIndex(
            Sides,
            side => word.Split('-', '_', ' ', '.').Any(part => Array.Exists(side, name => string.Equals(name, part, StringComparison.OrdinalIgnoreCase)))
        );

    /// <summary>Insertions, deletions, replacements and swaps of neighbours, case ignored.</summary>
    public static int Edits(string left, string right)
    {
        var beforeLast = new int[right.Length + 1];
        var last = new int[right.Length + 1];
        var row = new int[right.Length + 1];
        for (var j = 0; j <= right.Length; j++)
        {
            last[j] = j;
        }

        for (var i = 1; i <= left.Length; i++)
        {
            row[0] = i;
            for (var j = 1; j <= right.Length; j++)
            {
                var same = Same(left[i - 1], right[j - 1]);
                row[j] = Math.Min(Math.Min(last[j], row[j - 1]) + 1, last[j - 1] + (same ? 0 : 1));
                if (i > 1 && j > 1 && Same(left[i - 1], right[j - 2]) && Same(left[i - 2], right[j - 1]))
                {
                    row[j] = Math.Min(row[j], beforeLast[j - 2] + 1);
                }
            }

            (beforeLast, last, row) = (last, row, beforeLast);
        }

        return last[right.Length];
    }

    private static bool Same(char left, char right) => char.ToLowerInvariant(left) == char.ToLowerInvariant(right);
}
