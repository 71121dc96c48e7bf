using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Planning.Comparing;

namespace RoutingRules.Planning.Changeovers;

/// <summary>Finds what has to be done to devices, leads and clocks.</summary>
internal sealed class RigMoves(ShowSide before, ShowSide after, Pace pace)
{
    private const string MainsHazard = "Mains power and earthing belong to licensed people under local codes.";

    private readonly Rig old = before.Show.Document.Rig;
    private readonly Rig now = after.Show.Document.Rig;

    /// <summary>Leads out, devices out, exchanged, in.</summary>
    public List<PlannedMove> Takedown() => [.. CablesOut(), .. LinksOut(), .. DevicesOut()];

    /// <summary>Devices in, network leads in.</summary>
    public List<PlannedMove> BuildUp() => [.. DevicesIn(), .. LinksIn()];

    /// <summary>Clocks and what networks say about time.</summary>
    public IEnumerable<PlannedMove> Clocks()
    {
        var clocks = old.Clocks.ToLookup(clock => clock.Id);
        foreach (var clock in (IEnumerable<Clock>)now.Clocks)
        {
            if (clocks[clock.Id].FirstOrDefault() is not { } was || (was.SampleRate, was.Leader, was.Backup) != (clock.SampleRate, clock.Leader, clock.Backup))
            {
                var rate = clock.SampleRate.ToString(CultureInfo.InvariantCulture);
                yield return Clock(
                    $"Set clock '{clock.Id}': leader {clock.Leader}, {(clock.Backup is { } backup ? $"backup {backup}" : "no backup")}, {rate} Hz.",
                    show => show with { Rig = show.Rig with { Clocks = Put(show.Rig.Clocks, clock, other => other.Id == clock.Id) } }
                );
            }
        }

        var networks = old.Networks.ToLookup(network => network.Id);
        foreach (var network in (IEnumerable<Network>)now.Networks)
        {
            if (
                networks[network.Id].FirstOrDefault() is { } was
                && (was.Transport, was.PacketMicroseconds, was.PresentationOffsetMicroseconds, was.Clock)
                    != (network.Transport, network.PacketMicroseconds, network.PresentationOffsetMicroseconds, network.Clock)
            )
            {
                var packet = network.PacketMicroseconds is { } time ? $", packets of {time.ToString(CultureInfo.InvariantCulture)} \u00b5s" : "";
                packet += network.PresentationOffsetMicroseconds is { } offset
                    ? $", given out after {offset.ToString(CultureInfo.InvariantCulture)} \u00b5s"
                    : "";
                yield return Clock(
                    $"Set network '{network.Id}': {network.Transport}{packet}{(network.Clock is { } clock ? $", clock '{clock}'" : "")}.",
                    show => show with { Rig = show.Rig with { Networks = Put(show.Rig.Networks, network, other => other.Id == network.Id) } }
                );
            }
        }
    }

    private PlannedMove Clock(string text, Func<Show, Show> apply) =>
        new()
        {
            Phase = ChangeoverPhase.Clock,
            Text = text,
            Hazards = ["Everything stays muted until every device shows that it is locked: a device that is not can put out full-scale noise."],
            Seconds = pace.SecondsForClock,
            Apply = apply,
        };

    private IEnumerable<PlannedMove> CablesOut()
    {
        var wanted = now.Cables.Select(cable => (cable.From, cable.To)).ToHashSet();
        foreach (var cable in old.Cables.Where(cable => !wanted.Contains((cable.From, cable.To))))
        {
            yield return Cable(
                cable,
                $"Pull the cable from {cable.From} to {cable.To}{Way(cable)}.",
                show =>
                    show with
                    {
                        Rig = show.Rig with { Cables = show.Rig.Cables.Where(other => (other.From, other.To) != (cable.From, cable.To)).ToValueList() },
                    }
            );
        }
    }

    /// <summary>Cables in.</summary>
    public IEnumerable<PlannedMove> CablesIn()
    {
        var there = old.Cables.Select(cable => (cable.From, cable.To)).ToHashSet();
        foreach (var cable in now.Cables.Where(cable => there.Add((cable.From, cable.To))))
        {
            yield return Cable(
                cable,
                $"Plug a cable from {cable.From} to {cable.To}{Way(cable)}.",
                show => show with { Rig = show.Rig with { Cables = show.Rig.Cables.Append(cable).ToValueList() } }
            ) with
            {
                NeedsPhantomOff = true,
            };
        }
    }

    private PlannedMove Cable(Cable cable, string text, Func<Show, Show> apply) =>
        new()
        {
            Phase = ChangeoverPhase.Stage,
            Place = cable.From.Device,
            Text = text,
            Points = [cable.From, cable.To],
            Seconds = pace.SecondsToPlug,
            Apply = apply,
            Plugs = Enumerable.Range(0, cable.To.Width).Select(i => cable.To[i]).ToValueList(),
        };

    private IEnumerable<PlannedMove> LinksOut()
    {
        foreach (var link in old.Links.Where(link => !now.Links.Any(other => IsSame(link, other))))
        {
            yield return Lead(
                link,
                $"Pull the network lead '{link.Id}' from {link.From} and {link.To}.",
                show => show with { Rig = show.Rig with { Links = show.Rig.Links.Where(other => !IsSame(link, other)).ToValueList() } }
            );
        }
    }

    private IEnumerable<PlannedMove> LinksIn()
    {
        foreach (var link in now.Links.Where(link => !old.Links.Any(other => IsSame(link, other))))
        {
            yield return Lead(
                link,
                $"Plug the network lead '{link.Id}' into {link.From} and {link.To}.",
                show => show with { Rig = show.Rig with { Links = show.Rig.Links.Append(link).ToValueList() } }
            );
        }
    }

    private PlannedMove Lead(Link link, string text, Func<Show, Show> apply) =>
        new()
        {
            Phase = ChangeoverPhase.Stage,
            Place = link.From.Device,
            Text = text,
            Points = [link.From, link.To],
            Hazards = ["Everything that travels over this lead can stop or click."],
            Seconds = pace.SecondsToPlug,
            Apply = apply,
        };

    private static bool IsSame(Link x, Link y) => (x.Id, x.Network, x.From, x.To) == (y.Id, y.Network, y.From, y.To);

    private IEnumerable<PlannedMove> DevicesOut()
    {
        foreach (var device in old.Devices.Where(device => !now.Devices.Any(other => other.Id == device.Id)))
        {
            yield return Device(
                device,
                $"Take out {Name(device)}.",
                show => show with { Rig = show.Rig with { Devices = show.Rig.Devices.Where(other => other.Id != device.Id).ToValueList() } }
            );
        }
    }

    private IEnumerable<PlannedMove> DevicesIn()
    {
        foreach (var device in (IEnumerable<Device>)now.Devices)
        {
            var was = old.Devices.FirstOrDefault(other => other.Id == device.Id);
            if (was is null || was.Profile != device.Profile || was.Zone != device.Zone)
            {
                var place = device.Zone is { } zone ? $" at {ZoneName(zone)}" : "";
                var text =
                    was is null ? $"Bring in {Name(device)} ({device.Profile}){place}, connect it and power it up."
                    : was.Profile != device.Profile ? $"Exchange {Name(device)} for one of type {device.Profile}{place}."
                    : $"Move {Name(device)}{place}.";
                yield return Device(
                    device,
                    text,
                    show => show with { Rig = show.Rig with { Devices = Put(show.Rig.Devices, device, other => other.Id == device.Id) } }
                );
            }
        }
    }

    private PlannedMove Device(Device device, string text, Func<Show, Show> apply) =>
        new()
        {
            Phase = ChangeoverPhase.Stage,
            Place = device.Id,
            Text = text,
            Hazards = [MainsHazard],
            Seconds = pace.SecondsForDevice,
            Apply = apply,
        };

    private static ValueList<T> Put<T>(ValueList<T> list, T element, Func<T, bool> isSame)
    {
        var elements = list.ToList();
        var at = elements.FindIndex(other => isSame(other));
        if (at < 0)
        {
            elements.Add(element);
        }
        else
        {
            elements[at] = element;
        }

        return elements.ToValueList();
    }

    private static string Name(Device device) => device.Label is null ? $"'{device.Id}'" : $"'{device.Label}' ({device.Id})";

    private string ZoneName(Id<Zone> id) => now.Zones.FirstOrDefault(zone => zone.Id == id)?.Name ?? id.Value;

    private static string Way(Cable cable) => cable.Way is null ? "" : $" ({cable.Way})";
}
