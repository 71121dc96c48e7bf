using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Reports.Sheets;

/// <summary>
/// The devices at which somebody plugs, patches or marks something for the show; all others are only cabled or linked once, when the rig is built.
/// </summary>
internal sealed class WorkedDevices
{
    private readonly HashSet<Id<Device>> worked = [];

    public WorkedDevices(SheetFacts facts)
    {
        var show = facts.Show.Document;
        Add(show.Patch.Routes.SelectMany(route => route.From is { } from ? new[] { route.To, from } : [route.To]));
        Add(show.Patch.Streams.SelectMany(stream => stream.To.Select(to => to.At).Prepend(stream.From)));
        Add(show.Patch.Inputs.Select(input => input.At));
        Add(show.Patch.Labels.Select(label => label.At));
        Add(show.Rig.Unavailable.Select(mark => mark.At).Concat(show.Rig.Reserved.Select(mark => mark.At)));
        Add(show.Feeds.Select(feed => feed.Source));
        Add(show.Lines.SelectMany(line => line.From.At.Concat(line.To)));
        worked.UnionWith(show.Feeds.SelectMany(feed => feed.To).SelectMany(to => to.Devices));
        foreach (var demand in facts.Show.Demands.Where(demand => !demand.Existing.IsNone && facts.Graph.Via(demand.Existing) != HopKind.Cable))
        {
            worked.Add(facts.Graph.DeviceOf(demand.Existing).Id);
        }

        // What hangs on nothing is not built into the rig: somebody will have to see to it.
        var built = show
            .Rig.Cables.SelectMany(cable => new[] { cable.From.Device, cable.To.Device })
            .Concat(show.Rig.Links.SelectMany(link => new[] { link.From.Device, link.To.Device }))
            .ToHashSet();
        worked.UnionWith(facts.Show.Devices.Select(device => device.Id).Where(id => !built.Contains(id)));
    }

    public bool Contains(Id<Device> device) => worked.Contains(device);

    private void Add(IEnumerable<PointRange> points) => worked.UnionWith(points.Select(at => at.Device));
}
