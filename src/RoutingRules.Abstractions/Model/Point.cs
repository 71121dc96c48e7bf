using System.Globalization;
using RoutingRules.Profiles;

namespace RoutingRules.Model;

/// <summary>One channel position of a device, written <c>desk/aux/3</c>.</summary>
public readonly record struct Point
{
    /// <summary>A point.</summary>
    /// <param name="device">The device.</param>
    /// <param name="group">The port group of the device's profile.</param>
    /// <param name="number">The number in the group, 1 to 99999.</param>
    /// <exception cref="ArgumentException">An id is none.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The number is out of range.</exception>
    public Point(Id<Device> device, Id<PortGroup> group, int number)
    {
        if (device.IsNone || group.IsNone)
        {
            throw new ArgumentException("A point needs a device and a port group.");
        }

        ArgumentOutOfRangeException.ThrowIfLessThan(number, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(number, AddressParser.MaxNumber);
        Device = device;
        Group = group;
        Number = number;
    }

    /// <summary>The device.</summary>
    public Id<Device> Device { get; }

    /// <summary>The port group.</summary>
    public Id<PortGroup> Group { get; }

    /// <summary>The number in the group, from 1.</summary>
    public int Number { get; }

    /// <summary>The point as written in documents.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Device}/{Group}/{Number}");
}
