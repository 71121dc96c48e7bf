using RoutingRules.Model;

namespace RoutingRules.Planning.Comparing;

/// <summary>Writes a show with other ids for some devices; nothing else changes.</summary>
internal sealed class DeviceRenamer(IReadOnlyDictionary<string, string> names)
{
    public Show Apply(Show show) =>
        names.Count == 0
            ? show
            : show with
            {
                Rig = Rig(show.Rig),
                Feeds = show.Feeds.Select(Feed).ToValueList(),
                Lines = show.Lines.Select(Line).ToValueList(),
                Patch = Patch(show.Patch),
            };

    private Rig Rig(Rig rig) =>
        rig with
        {
            Clocks = rig
                .Clocks.Select(clock => clock with { Leader = Id(clock.Leader), Backup = clock.Backup is { } backup ? Id(backup) : null })
                .ToValueList(),
            Devices = rig.Devices.Select(device => device with { Id = Id(device.Id) }).ToValueList(),
            Links = rig.Links.Select(link => link with { From = At(link.From), To = At(link.To) }).ToValueList(),
            Cables = rig.Cables.Select(cable => cable with { From = At(cable.From), To = At(cable.To) }).ToValueList(),
            Unavailable = rig.Unavailable.Select(mark => mark with { At = At(mark.At) }).ToValueList(),
            Reserved = rig.Reserved.Select(mark => mark with { At = At(mark.At) }).ToValueList(),
        };

    private Feed Feed(Feed feed) =>
        feed with
        {
            Source = At(feed.Source),
            To = feed.To.Select(to => to with { At = to.At is { } at ? At(at) : null, Devices = Ids(to.Devices) }).ToValueList(),
        };

    private Line Line(Line line) =>
        line with
        {
            From = line.From with { At = All(line.From.At), Devices = Ids(line.From.Devices), Source = line.From.Source is { } source ? At(source) : null },
            To = All(line.To),
        };

    private Patch Patch(Patch patch) =>
        patch with
        {
            Streams = patch
                .Streams.Select(stream =>
                    stream with
                    {
                        From = At(stream.From),
                        To = stream.To.Select(receiver => receiver with { At = At(receiver.At) }).ToValueList(),
                    }
                )
                .ToValueList(),
            Routes = patch.Routes.Select(route => route with { From = route.From is { } from ? At(from) : null, To = At(route.To) }).ToValueList(),
            Inputs = patch
                .Inputs.Select(input =>
                    input with
                    {
                        At = At(input.At),
                        GainOwner = input.GainOwner is { } owner ? Id(owner) : null,
                        GainFollowers = Ids(input.GainFollowers),
                    }
                )
                .ToValueList(),
            Labels = patch.Labels.Select(label => label with { At = At(label.At) }).ToValueList(),
        };

    private Id<Device> Id(Id<Device> id) => names.TryGetValue(id.Value, out var name) ? new Id<Device>(name) : id;

    private ValueList<Id<Device>> Ids(ValueList<Id<Device>> ids) => ids.Select(Id).ToValueList();

    private PointRange At(PointRange at) => at.Width == 0 ? at : new PointRange(Id(at.Device), at.Group, at.First, at.Last);

    private ValueList<PointRange> All(ValueList<PointRange> ranges) => ranges.Select(At).ToValueList();
}
