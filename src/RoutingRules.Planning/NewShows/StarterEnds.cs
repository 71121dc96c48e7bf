using System.Globalization;
using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Planning.RunningOrders;
using RoutingRules.Profiles;
using RoutingRules.Signal;

namespace RoutingRules.Planning.NewShows;

/// <summary>Puts amplifiers and racks behind the outputs that an assignment chose, and writes settings and labels.</summary>
internal sealed class StarterEnds(StarterOptions options, StarterProfiles profiles, StarterRig rig, StarterIntent intent)
{
    private static readonly Id<PortGroup> In = new("in");

    private readonly List<Device> devices = [];
    private readonly List<(PointRange From, PointRange To)> cables = [];
    private readonly Dictionary<Id<Feed>, PointRange> ends = [];

    public Show Finish(Show assigned, ValueList<Placement> placements)
    {
        var outputs = placements.ToDictionary(placement => placement.Demand, placement => placement.At, StringComparer.Ordinal);
        AddAmplifiers(assigned, outputs);
        AddRacks(assigned, outputs);
        return assigned with
        {
            Revision = "A",
            Rig = assigned.Rig with { Devices = assigned.Rig.Devices.Concat(devices).ToValueList(), Cables = Cables() },
            Feeds = assigned
                .Feeds.Select(feed => ends.TryGetValue(feed.Id, out var end) ? feed with { To = [new Destination { At = end }] } : feed)
                .ToValueList(),
            Patch = assigned.Patch with
            {
                Routes = assigned.Patch.Routes.Concat(Cleared).ToValueList(),
                Inputs = Inputs(assigned, outputs),
                Labels = Labels(assigned, outputs),
            },
        };
    }

    private void AddAmplifiers(Show show, Dictionary<string, PointRange> outputs)
    {
        var inputs = Inputs(options.Amplifier, 1);
        foreach (var (box, place) in rig.Boxes.Zip(rig.Places))
        {
            var fed = show
                .Feeds.Where(feed => feed.Role == FeedRole.Main || feed.Role == FeedRole.Sub)
                .Where(feed => OutputOf(feed, outputs).Device == box.Id)
                .ToList();
            var name = rig.Boxes.Count == 1 ? "amp" : "amp" + box.Id.Value["box".Length..];
            for (var i = 0; i < fed.Count; i++)
            {
                if (i % inputs == 0)
                {
                    Add(options.Amplifier, name, i / inputs, rig.Boxes.Count == 1 ? "Amplifier" : $"Amplifier {StarterRig.Word(place)}", box.Zone);
                }

                Plug(fed[i], outputs, (i % inputs) + 1);
            }
        }
    }

    private void AddRacks(Show show, Dictionary<string, PointRange> outputs)
    {
        var fed = show.Feeds.Where(feed => feed.Role == FeedRole.InEar).ToList();
        var packs = Inputs(options.EarRack, 2) / 2;
        for (var i = 0; i < fed.Count; i++)
        {
            if (i % packs == 0)
            {
                var zone = rig.MonitorPosition ?? rig.Boxes.First(box => box.Id == OutputOf(fed[i], outputs).Device).Zone;
                Add(options.EarRack, "ears", i / packs, "Ear rack", zone);
            }

            Plug(fed[i], outputs, (2 * (i % packs)) + 1);
        }
    }

    private int Inputs(Id<DeviceProfile> profile, int least) =>
        profiles.Count(profile, In.Value, PortKind.Input) is var count && count >= least
            ? count
            : throw new ArgumentException($"{profile} has no {least} inputs in a group '{In}'.");

    private void Add(Id<DeviceProfile> profile, string id, int before, string label, Id<Zone>? zone)
    {
        var number = before == 0 ? "" : (before + 1).ToString(CultureInfo.InvariantCulture);
        devices.Add(
            new Device
            {
                Id = new(before == 0 ? id : $"{id}-{number}"),
                Profile = profile,
                Label = $"{label} {number}".TrimEnd(),
                Zone = zone,
            }
        );
    }

    private void Plug(Feed feed, Dictionary<string, PointRange> outputs, int first)
    {
        var output = OutputOf(feed, outputs);
        var input = new PointRange(devices[^1].Id, In, first, first + output.Width - 1);
        ends.Add(feed.Id, input);
        cables.Add((output, input));
    }

    private static PointRange OutputOf(Feed feed, Dictionary<string, PointRange> outputs) => outputs[$"{feed.Id}/1"];

    /// <summary>Neighbours as one cable.</summary>
    private ValueList<Cable> Cables() =>
        Runs.Chains(cables, (x, y) => Runs.Follow(x.From[x.From.Width - 1], y.From[0]) && Runs.Follow(x.To[x.To.Width - 1], y.To[0]))
            .Select(chain => new Cable { From = Whole(chain[0].From, chain[^1].From), To = Whole(chain[0].To, chain[^1].To) })
            .ToValueList();

    private static PointRange Whole(PointRange first, PointRange last) => new(first.Device, first.Group, first.First, last.Last);

    /// <summary>Routes that clear the outputs of consoles which would sound though nobody asked for it.</summary>
    public ValueList<Route> Cleared =>
        (
            from desk in rig.MonitorDesk is { } second ? (Device[])[rig.Desk, second] : [rig.Desk]
            from run in profiles.SoundingOutputs(desk.Profile)
            select new Route { From = null, To = new PointRange(desk.Id, run.Group, run.First, run.Last) }
        ).ToValueList();

    private ValueList<InputSettings> Inputs(Show show, Dictionary<string, PointRange> places) =>
        ActSettings.Join(
            show.Lines.Select(line => new InputSettings
                {
                    At = places[line.Id.Value],
                    Phantom = line.Phantom == PhantomNeed.Required,
                    GainOwner = rig.Desk.Id,
                    GainFollowers = rig.MonitorDesk is { } desk ? [desk.Id] : default,
                })
                .ToValueList()
        );

    private ValueList<PointLabel> Labels(Show show, Dictionary<string, PointRange> places)
    {
        var labels = new List<PointLabel>();
        foreach (var feed in show.Feeds)
        {
            Add(feed.Id.Value, feed.Source);
        }

        foreach (var feed in show.Feeds)
        {
            Add(feed.Id.Value, OutputOf(feed, places));
        }

        foreach (var line in show.Lines)
        {
            foreach (var channel in line.To)
            {
                Add(line.Id.Value, channel);
            }
        }

        return labels.ToValueList();

        void Add(string id, PointRange at)
        {
            for (var i = 0; i < at.Width; i++)
            {
                labels.Add(new PointLabel { At = Runs.One(at[i]), Text = intent.Label(id, at.Width, i) });
            }
        }
    }
}
