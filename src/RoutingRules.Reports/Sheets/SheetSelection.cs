using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Reports.Sheets;

/// <summary>Which lines and feeds concern the devices that were asked for.</summary>
internal sealed class SheetSelection(SheetFacts facts, DeviceNode[]? devices)
{
    /// <summary>True when the line enters or shall arrive at one of the devices.</summary>
    public bool Concerns(LineNode line) =>
        devices is null || facts.Entries(line).Any(Has) || line.Sinks.Any(Has) || IsWanted(line.Model.From.Devices, line.Model.From.Zones);

    /// <summary>True when the feed starts, passes, ends or shall end at one of the devices.</summary>
    public bool Concerns(FeedNode feed)
    {
        if (devices is null || Has(feed.Source))
        {
            return true;
        }

        for (var entry = 0; entry < feed.Model.To.Count; entry++)
        {
            var to = feed.Model.To[entry];
            var served = facts.Show.Demands[feed.FirstDemand + entry].Existing;
            if (
                (to.At is { } at && devices.Any(device => device.Id == at.Device))
                || IsWanted(to.Devices, to.Zones)
                || (!served.IsNone && (facts.Chain(served).Any(Has) || facts.Graph.Carrying(served).Any(Has)))
            )
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>True when no devices were asked for, so that all are shown.</summary>
    public bool IsAll => devices is null;

    /// <summary>True when the point is on one of the devices that were asked for.</summary>
    public bool Has(PointIndex point) => !point.IsNone && devices is not null && devices.Contains(facts.Graph.DeviceOf(point));

    private bool IsWanted(ValueList<Id<Device>> ids, ValueList<Id<Zone>> zones) =>
        devices!.Any(device => ids.Contains(device.Id) || (device.Model.Zone is { } zone && zones.Contains(zone)));
}
