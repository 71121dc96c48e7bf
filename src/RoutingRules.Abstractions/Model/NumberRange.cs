using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text;

namespace RoutingRules.Model;

/// <summary>A run of numbers counted from 1, both ends included, written <c>4</c> or <c>1-8</c>.</summary>
public readonly record struct NumberRange
{
    internal const string Shape = "a number or a range, such as 4 or 1-8";

    /// <summary>A run of numbers.</summary>
    /// <param name="first">First number, 1 to 99999.</param>
    /// <param name="last">Last number, <paramref name="first"/> to 99999.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range or the run is backwards.</exception>
    public NumberRange(int first, int last)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(first, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(last, first);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(last, AddressParser.MaxNumber);
        First = first;
        Last = last;
    }

    /// <summary>First number.</summary>
    public int First { get; }

    /// <summary>Last number.</summary>
    public int Last { get; }

    /// <summary>How many numbers; 0 only for <c>default</c>.</summary>
    public int Width => First == 0 ? 0 : Last - First + 1;

    /// <summary>Reads a range.</summary>
    /// <param name="text">For example <c>1-8</c>.</param>
    /// <param name="range">The range when true is returned.</param>
    /// <param name="problem">What is wrong and what to write instead, when false is returned.</param>
    public static bool TryParse(string? text, out NumberRange range, [NotNullWhen(false)] out string? problem)
    {
        var found = TryParse(Encoding.UTF8.GetBytes(text ?? ""), out range);
        problem = found == AddressProblem.None ? null : AddressParser.Explain(found, Shape);
        return problem is null;
    }

    internal static AddressProblem TryParse(ReadOnlySpan<byte> text, out NumberRange range)
    {
        var problem = AddressParser.Parse(text, 0, out _, out _, out var first, out var last);
        range = problem == AddressProblem.None ? new NumberRange(first, last) : default;
        return problem;
    }

    /// <summary>The range as written in documents.</summary>
    public override string ToString() =>
        First == Last ? First.ToString(CultureInfo.InvariantCulture) : string.Create(CultureInfo.InvariantCulture, $"{First}-{Last}");
}
