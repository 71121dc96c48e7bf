using RoutingRules.Model;
using RoutingRules.Networks;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Resolving;

namespace RoutingRules.Reports.Sheets;

/// <summary>Makes the sheets of the networks.</summary>
internal sealed class NetworkSheetBuilder(SheetFacts facts, SheetSelection selection)
{
    private readonly SheetLinkLoads loads = new(facts.Show);

    /// <summary>Networks with streams or links at the devices that were asked for.</summary>
    public ValueList<NetworkSheet> Build() =>
        facts
            .Show.Document.Rig.Networks.Select(Network)
            .Where(network => selection.IsAll || network.Streams.Count > 0 || network.Links.Count > 0)
            .ToValueList();

    private NetworkSheet Network(Network network)
    {
        var clock = NetworkRates.Clock(facts.Show.Document.Rig, network.Clock);
        return new NetworkSheet
        {
            Id = network.Id,
            Name = network.Name ?? network.Id.Value,
            Transport = network.Transport,
            PacketMilliseconds = PacketTime.Milliseconds(network),
            Clock = clock?.Id.Value ?? network.Clock?.Value,
            SampleRate = clock?.SampleRate,
            Leader = clock is null ? null : Label(clock.Leader),
            Backup = clock?.Backup is { } backup ? Label(backup) : null,
            Streams = facts.Show.Streams.Where(stream => stream.Model.Network == network.Id && Concerns(stream)).Select(Stream).ToValueList(),
            Links = facts.Show.Links.Where(link => link.Model.Network == network.Id && Concerns(link)).Select(Link).ToValueList(),
        };
    }

    private string Label(Id<Device> id) => facts.Graph.Device(id)?.DisplayName ?? id.Value;

    private bool Concerns(StreamNode stream) => selection.IsAll || selection.Has(stream.From) || stream.Receivers.Any(receiver => selection.Has(receiver.At));

    private bool Concerns(LinkNode link) => selection.IsAll || selection.Has(link.From) || selection.Has(link.To);

    private NetworkStream Stream(StreamNode stream) =>
        new()
        {
            Id = stream.Model.Id,
            Label = stream.Model.Label,
            From = facts.Address(stream.Model.From),
            To = stream
                .Receivers.Select(receiver =>
                    receiver.Model.Channels is { } channels ? $"{facts.Address(receiver.Model.At)} (ch {channels})" : facts.Address(receiver.Model.At)
                )
                .ToValueList(),
            Channels = stream.Model.From.Width,
            Used = stream.From.IsNone ? 0 : Enumerable.Range(0, stream.Model.From.Width).Count(i => facts.Signal(stream.From + i) is not null),
            BitsPerSecond = SheetLinkLoads.Rate(facts.Show, stream),
        };

    private NetworkLink Link(LinkNode link) =>
        new()
        {
            Id = link.Model.Id,
            From = facts.Address(link.Model.From),
            To = facts.Address(link.Model.To),
            Cable = SheetWords.Cable(link.Model),
            Speed = link.Model.SpeedMbps * 1_000_000.0,
            Forward = loads.Forward(link),
            Backward = loads.Backward(link),
            IsPartial = loads.IsPartial(link),
        };
}
