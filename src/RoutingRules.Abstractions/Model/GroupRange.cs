using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text;
using RoutingRules.Profiles;

namespace RoutingRules.Model;

/// <summary>A run of points of a profile's own port group, written <c>aux/3</c> or <c>aux/3-6</c>, both ends included.</summary>
public readonly record struct GroupRange
{
    internal const string Shape = "group/number or group/first-last, such as aux/3 or aux/1-16";

    /// <summary>A run of points of one group.</summary>
    /// <param name="group">The port group.</param>
    /// <param name="first">First number, 1 to 99999.</param>
    /// <param name="last">Last number, <paramref name="first"/> to 99999.</param>
    /// <exception cref="ArgumentException">The group is none.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range or the run is backwards.</exception>
    public GroupRange(Id<PortGroup> group, int first, int last)
    {
        if (group.IsNone)
        {
            throw new ArgumentException("A group range needs a port group.", nameof(group));
        }

        Group = group;
        Numbers = new NumberRange(first, last);
    }

    /// <summary>The port group.</summary>
    public Id<PortGroup> Group { get; }

    /// <summary>The numbers in the group.</summary>
    public NumberRange Numbers { get; }

    /// <summary>First number.</summary>
    public int First => Numbers.First;

    /// <summary>Last number.</summary>
    public int Last => Numbers.Last;

    /// <summary>How many points; 0 only for <c>default</c>.</summary>
    public int Width => Numbers.Width;

    /// <summary>Reads a group range.</summary>
    /// <param name="text">For example <c>aux/1-16</c>.</param>
    /// <param name="range">The run when true is returned.</param>
    /// <param name="problem">What is wrong and what to write instead, when false is returned.</param>
    public static bool TryParse(string? text, out GroupRange range, [NotNullWhen(false)] out string? problem)
    {
        range = default;
        var bytes = Encoding.UTF8.GetBytes(text ?? "");
        var found = AddressParser.Parse(bytes, 1, out var slash, out _, out var first, out var last);
        problem = found == AddressProblem.None ? null : AddressParser.Explain(found, Shape);
        if (problem is not null)
        {
            return false;
        }

        range = new GroupRange(new Id<PortGroup>(Encoding.UTF8.GetString(bytes.AsSpan(0, slash))), first, last);
        return true;
    }

    /// <summary>The run as written in documents.</summary>
    public override string ToString() => Width == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"{Group}/{Numbers}");
}
