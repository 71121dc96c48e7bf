namespace RoutingRules.Model;

/// <summary>Reads the numbered addresses of documents from UTF-8: <c>device/group/3-6</c>, <c>group/3-6</c> and <c>3-6</c>.</summary>
internal static class AddressParser
{
    /// <summary>The largest number an address may hold.</summary>
    public const int MaxNumber = 99_999;

    /// <summary>The longest id, in characters.</summary>
    public const int MaxIdLength = 64;

    /// <summary>The longest address: two ids, two slashes, two numbers and a hyphen.</summary>
    public const int MaxLength = (2 * MaxIdLength) + 2 + 11;

    /// <summary>Splits <paramref name="text"/> into <paramref name="ids"/> leading ids and a number range.</summary>
    /// <param name="text">UTF-8 text.</param>
    /// <param name="ids">How many ids stand before the numbers: 2, 1 or 0.</param>
    /// <param name="firstSlash">Position of the first slash, or -1.</param>
    /// <param name="lastSlash">Position of the slash before the numbers, or -1.</param>
    /// <param name="first">First number.</param>
    /// <param name="last">Last number, at least <paramref name="first"/>.</param>
    public static AddressProblem Parse(ReadOnlySpan<byte> text, int ids, out int firstSlash, out int lastSlash, out int first, out int last)
    {
        firstSlash = lastSlash = -1;
        first = last = 0;
        if (text.IsEmpty)
        {
            return AddressProblem.Empty;
        }

        if (text.Length > MaxLength)
        {
            return AddressProblem.TooLong;
        }

        var start = 0;
        for (var part = 0; part < ids; part++)
        {
            var length = text[start..].IndexOf((byte)'/');
            if (length < 0)
            {
                return AddressProblem.PartCount;
            }

            if (!IsId(text.Slice(start, length)))
            {
                return AddressProblem.BadId;
            }

            lastSlash = start + length;
            firstSlash = firstSlash < 0 ? lastSlash : firstSlash;
            start = lastSlash + 1;
        }

        var numbers = text[start..];
        return numbers.Contains((byte)'/') ? AddressProblem.PartCount : ParseNumbers(numbers, out first, out last);
    }

    /// <summary>True for 1 to 64 letters, digits, dots, hyphens or underscores, the first a letter or digit.</summary>
    public static bool IsId(ReadOnlySpan<byte> text)
    {
        if (text.IsEmpty || text.Length > MaxIdLength || text[0] is (byte)'.' or (byte)'-' or (byte)'_')
        {
            return false;
        }

        foreach (var value in text)
        {
            if (!IsIdCharacter(value))
            {
                return false;
            }
        }

        return true;
    }

    private static bool IsIdCharacter(byte value)
    {
        // One bit for each character that may stand in an id: hyphen, dot and digits below 64, letters and underscore from there.
        const ulong Below64 = 0x03FF_6000_0000_0000;
        const ulong From64 = 0x07FF_FFFE_87FF_FFFE;
        return value < 128 && ((value < 64 ? Below64 : From64) >> (value & 63) & 1) != 0;
    }

    private static AddressProblem ParseNumbers(ReadOnlySpan<byte> text, out int first, out int last)
    {
        last = 0;
        var hyphen = text.IndexOf((byte)'-');
        var problem = ParseNumber(hyphen < 0 ? text : text[..hyphen], out first);
        if (problem != AddressProblem.None || hyphen < 0)
        {
            last = first;
            return problem;
        }

        problem = ParseNumber(text[(hyphen + 1)..], out last);
        return problem == AddressProblem.None && last < first ? AddressProblem.Reversed : problem;
    }

    private static AddressProblem ParseNumber(ReadOnlySpan<byte> text, out int number)
    {
        number = 0;
        if (text.IsEmpty)
        {
            return AddressProblem.NoNumber;
        }

        foreach (var digit in text)
        {
            if (digit is < (byte)'0' or > (byte)'9')
            {
                return AddressProblem.BadNumber;
            }
        }

        if (text[0] == (byte)'0')
        {
            return text.Length == 1 ? AddressProblem.Zero : AddressProblem.LeadingZero;
        }

        if (text.Length > 5)
        {
            return AddressProblem.TooLarge;
        }

        foreach (var digit in text)
        {
            number = (number * 10) + (digit - '0');
        }

        return AddressProblem.None;
    }

    /// <summary>What is wrong and what to write instead.</summary>
    /// <param name="problem">Any problem but <see cref="AddressProblem.None"/>.</param>
    /// <param name="shape">The wanted shape with an example.</param>
    public static string Explain(AddressProblem problem, string shape) =>
        problem switch
        {
            AddressProblem.Empty => $"is empty; write {shape}",
            AddressProblem.TooLong => $"is longer than {MaxLength} characters; write {shape}",
            AddressProblem.PartCount => $"has the wrong number of parts; write {shape}",
            AddressProblem.BadId =>
                $"holds an id that is not 1 to {MaxIdLength} letters, digits, '.', '-' or '_' starting with a letter or digit; write {shape}",
            AddressProblem.NoNumber => $"lacks a number; write {shape}",
            AddressProblem.BadNumber => $"holds something other than digits where a number belongs; write {shape}",
            AddressProblem.Zero => $"holds the number 0, but numbers count from 1; write {shape}",
            AddressProblem.LeadingZero => $"holds a number with a leading zero; write {shape}",
            AddressProblem.TooLarge => $"holds a number above {MaxNumber}; write {shape}",
            AddressProblem.Reversed => $"runs backwards; put the smaller number first, as in {shape}",
            _ => throw new ArgumentOutOfRangeException(nameof(problem), problem, "Not a problem."),
        };
}
