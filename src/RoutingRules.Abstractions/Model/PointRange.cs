using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text;
using RoutingRules.Profiles;

namespace RoutingRules.Model;

/// <summary>A run of points of one port group, written <c>desk/aux/3</c> or <c>desk/aux/3-6</c>, both ends included.</summary>
public readonly record struct PointRange
{
    internal const string Shape = "device/group/number or device/group/first-last, such as desk/aux/3 or desk/aux/3-6";

    /// <summary>A run of points.</summary>
    /// <param name="device">The device.</param>
    /// <param name="group">The port group of the device's profile.</param>
    /// <param name="first">First number, 1 to 99999.</param>
    /// <param name="last">Last number, <paramref name="first"/> to 99999.</param>
    /// <exception cref="ArgumentException">An id is none.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range or the run is backwards.</exception>
    public PointRange(Id<Device> device, Id<PortGroup> group, int first, int last)
    {
        if (device.IsNone || group.IsNone)
        {
            throw new ArgumentException("A point needs a device and a port group.");
        }

        Device = device;
        Group = group;
        Numbers = new NumberRange(first, last);
    }

    /// <summary>The device.</summary>
    public Id<Device> Device { get; }

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

    /// <summary>The point at a position counted from 0.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The position is not in the run.</exception>
    public Point this[int position]
    {
        get
        {
            ArgumentOutOfRangeException.ThrowIfNegative(position);
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(position, Width);
            return new Point(Device, Group, First + position);
        }
    }

    /// <summary>Reads an address.</summary>
    /// <param name="text">For example <c>desk/aux/3-6</c>.</param>
    /// <param name="range">The run when true is returned.</param>
    /// <param name="problem">What is wrong and what to write instead, when false is returned.</param>
    public static bool TryParse(string? text, out PointRange range, [NotNullWhen(false)] out string? problem)
    {
        range = default;
        var bytes = Encoding.UTF8.GetBytes(text ?? "");
        var found = AddressParser.Parse(bytes, 2, out var firstSlash, out var lastSlash, out var first, out var last);
        problem = found == AddressProblem.None ? null : AddressParser.Explain(found, Shape);
        if (problem is not null)
        {
            return false;
        }

        range = new PointRange(
            new Id<Device>(Encoding.UTF8.GetString(bytes.AsSpan(0, firstSlash))),
            new Id<PortGroup>(Encoding.UTF8.GetString(bytes.AsSpan(firstSlash + 1, lastSlash - firstSlash - 1))),
            first,
            last
        );
        return true;
    }

    /// <summary>Reads an address.</summary>
    /// <exception cref="FormatException">The text is not an address; the message says what to write instead.</exception>
    public static PointRange Parse(string text) => TryParse(text, out var range, out var problem) ? range : throw new FormatException($"'{text}' {problem}.");

    /// <summary>The run as written in documents.</summary>
    public override string ToString() => Width == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"{Device}/{Group}/{Numbers}");
}
