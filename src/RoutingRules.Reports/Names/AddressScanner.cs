namespace RoutingRules.Reports.Names;

/// <summary>Finds addresses of points, such as <c>box-r/in/1-4, 7</c>, in texts for people.</summary>
internal static class AddressScanner
{
    // Longer digits are no number of a point; they must not overflow either.
    private const int MaxDigits = 5;

    /// <summary>The addresses of a text, from left to right, none inside another.</summary>
    public static IEnumerable<AddressSpan> Find(string text)
    {
        var from = 0;
        for (var slash = text.IndexOf('/', from); slash >= 0; slash = text.IndexOf('/', Math.Max(from, slash + 1)))
        {
            if (At(text, slash, from) is { } found)
            {
                yield return found;
                from = found.End;
            }
        }
    }

    private static AddressSpan? At(string text, int slash, int from)
    {
        var start = slash;
        while (start > from && IsIdCharacter(text[start - 1]))
        {
            start--;
        }

        if (start > 0 && text[start - 1] == '/')
        {
            return null;
        }

        while (start < slash && text[start] is '.' or '-' or '_')
        {
            start++;
        }

        var second = slash + 1;
        while (second < text.Length && IsIdCharacter(text[second]))
        {
            second++;
        }

        if (start == slash || second == slash + 1 || second >= text.Length || text[second] != '/')
        {
            return null;
        }

        var numbers = second + 1;
        var end = Run(text, numbers);
        if (end < 0)
        {
            return null;
        }

        while (end + 2 < text.Length && text[end] == ',' && text[end + 1] == ' ' && Run(text, end + 2) is > 0 and var next)
        {
            end = next;
        }

        return new AddressSpan(start, numbers, end, text[start..slash], text[(slash + 1)..second]);
    }

    /// <summary>The position after a number or a run of numbers; -1 when what stands there is none.</summary>
    private static int Run(string text, int at)
    {
        var end = Number(text, at);
        if (end >= 0 && end + 1 < text.Length && text[end] == '-' && Number(text, end + 1) is >= 0 and var last)
        {
            end = last;
        }

        return end >= 0 && EndsAt(text, end) ? end : -1;
    }

    private static int Number(string text, int at)
    {
        var end = at;
        while (end < text.Length && char.IsAsciiDigit(text[end]))
        {
            end++;
        }

        return end > at && end - at <= MaxDigits ? end : -1;
    }

    /// <summary>A full stop or a hyphen ends a number only where no further character of a name follows.</summary>
    private static bool EndsAt(string text, int end) =>
        end == text.Length
        || (text[end] is '.' or '-' ? end + 1 == text.Length || !IsIdCharacter(text[end + 1]) : text[end] != '/' && !IsIdCharacter(text[end]));

    private static bool IsIdCharacter(char value) => char.IsAsciiLetterOrDigit(value) || value is '.' or '-' or '_';
}
