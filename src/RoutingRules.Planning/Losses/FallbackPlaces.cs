using RoutingRules.Assignment;
using RoutingRules.Assignment.Explaining;
using RoutingRules.Checking.Facts;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Planning.Losses;

/// <summary>Finds devices that could stand in where the document allows no place that is left.</summary>
/// <remarks>
/// A device like the one a demand was at, a stage box or a console, that its source still reaches: in the same zone first, then in one that is near, then in
/// the
/// order of the rig, consoles last. Each demand is given one device with room, so that the search stays small.
/// </remarks>
internal sealed class FallbackPlaces(ResolvedShow show, FallbackTask task)
{
    private const int NoKind = 3;

    private readonly Dictionary<(int Device, bool IsInput), int> rooms = [];

    /// <summary>
    /// A show in which some demands may go to a device that could stand in. Separations no longer count: better on one supply with another than silent.
    /// </summary>
    /// <param name="document">The show to go on from.</param>
    /// <param name="demands">The demands, the most important first.</param>
    /// <param name="choice">Which of the devices with room is taken, from 0.</param>
    /// <param name="most">How many demands at most.</param>
    public (Show Widened, List<Placement> Avoid, List<DemandNode> Asked) Widen(Show document, List<DemandNode> demands, int choice, int most)
    {
        rooms.Clear();
        document = Unseparated(document);
        var avoid = new List<Placement>();
        var asked = new List<DemandNode>();
        foreach (var demand in demands)
        {
            if (asked.Count == most || Take(demand, choice) is not { } device)
            {
                continue;
            }

            asked.Add(demand);
            if (demand.Feed is { } feed)
            {
                var known = document.Feeds[feed.Index];
                var to = ShowChanges.Replace(known.To, demand.Entry, new Destination { Devices = [device.Id] });
                document = document with { Feeds = ShowChanges.Replace(document.Feeds, feed.Index, known with { Spread = false, To = to }) };
                avoid.AddRange(Cabled(device, demand));
            }
            else
            {
                var known = document.Lines[demand.Line!.Index];
                document = document with
                {
                    Lines = ShowChanges.Replace(document.Lines, demand.Line.Index, known with { From = new LineOrigin { Devices = [device.Id] } }),
                };
            }
        }

        return (document, avoid, asked);
    }

    /// <summary>A show in which separations no longer count.</summary>
    public static Show Unseparated(Show document) => document with { Feeds = document.Feeds.Select(feed => feed with { SeparateFrom = [] }).ToValueList() };

    private DeviceNode? Take(DemandNode demand, int choice)
    {
        var isInput = demand.Line is not null;
        foreach (var device in StandIns(demand))
        {
            if (Room(device, isInput) >= demand.Width && choice-- == 0)
            {
                rooms[(device.Index, isInput)] -= demand.Width;
                return device;
            }
        }

        return null;
    }

    /// <summary>The devices that could stand in, room or not, the nearest first.</summary>
    private IEnumerable<DeviceNode> StandIns(DemandNode demand)
    {
        var old = show.Graph.DeviceOf(demand.Existing);
        return show
            .Devices.Where(device =>
                !task.Lost.Devices[device.Index] && Kind(device) < NoKind && task.IsReached(demand, device) && HasPlaces(device, demand.Line is not null)
            )
            .OrderBy(device => Distance(old, device))
            .ThenBy(Kind)
            .ThenBy(device => device.Index);

        int Kind(DeviceNode device) =>
            device.Profile.Kind == old.Profile.Kind ? 0
            : device.Profile.Kind == DeviceKind.StageBox ? 1
            : device.Profile.Kind == DeviceKind.Console ? 2
            : NoKind;
    }

    private static bool HasPlaces(DeviceNode device, bool isInput) => device.Groups.Any(group => isInput ? group.Kind == PortKind.Input : group.IsLineOutput);

    /// <summary>
    /// The feeds that go on and could give up their place for one that matters more, the least important first: of lower priority, as wide, at an output of a
    /// device that could stand in, and on nobody's ears.
    /// </summary>
    public IEnumerable<DemandNode> Yielding(DemandNode demand)
    {
        var devices = StandIns(demand).ToList();
        return demand.Feed is not { } feed || IsBackedUp(feed)
            ? []
            : show
                .Demands.Where(other =>
                    other.Feed is { } yielding
                    && !other.Existing.IsNone
                    && !task.Demands.Contains(other)
                    && other.Width == demand.Width
                    && yielding.Model.Priority > feed.Model.Priority
                    && !IsHeardInEars(other)
                    && yielding.Model.BackupOf != feed.Model.Id
                    && show.Graph.GroupOf(other.Existing).IsLineOutput
                    && devices.Contains(show.Graph.DeviceOf(other.Existing))
                    && Enumerable
                        .Range(0, other.Width)
                        .All(position => show.MarkOf(other.Existing + position) is null && !task.IsAtLost(other.Existing + position))
                )
                .OrderByDescending(other => other.Feed!.Model.Priority)
                .ThenBy(other => devices.IndexOf(show.Graph.DeviceOf(other.Existing)))
                .ThenByDescending(other => other.Index);
    }

    private bool IsHeardInEars(DemandNode demand) => demand.Feed!.Model.Role == FeedRole.InEar || EarDemands.IsHeard(show.Ears, demand.Existing, demand.Width);

    /// <summary>Why there is no place for a demand that could be plugged elsewhere.</summary>
    /// <param name="demand">The demand.</param>
    /// <param name="couldYield">Whether something less important is at a place that it could take.</param>
    public string Reason(DemandNode demand, bool couldYield)
    {
        var devices = StandIns(demand).ToList();
        var what = demand.Line is not null ? (One: "input", Pair: "pair of inputs") : (One: "output", Pair: "pair of outputs");
        var noneYields = couldYield
            ? "; no patch was found in which something less important gives one up"
            : ", nor one that something less important could give up";
        return devices.Count == 0
            ? "Its places are gone, and no other stage box or console is left that "
                + $"{show.Graph.DeviceOf(demand.Feed?.Source ?? demand.Line!.Sinks.First(sink => !sink.IsNone)).DisplayName} "
                + "still reaches."
            : $"Its places are gone, and {Wording.List([.. devices.Select(device => device.DisplayName)])} {(devices.Count == 1 ? "has" : "have")} "
                + $"no {(demand.Width == 1 ? what.One : what.Pair)} free for it"
                + $"{(demand.Line is not null ? "" : noneYields)}.";
    }

    /// <summary>True when another feed that goes on backs it up: then nothing has to give way for it.</summary>
    private bool IsBackedUp(FeedNode feed) =>
        show.Demands.Any(other =>
            other.Feed is { } backup && backup.Model.BackupOf == feed.Model.Id && !other.Existing.IsNone && !task.Demands.Contains(other)
        );

    private static int Distance(DeviceNode old, DeviceNode other) =>
        old.Zone is not { } from || other.Zone is not { } to ? 2
        : from.Id == to.Id ? 0
        : from.Near.Contains(to.Id) || to.Near.Contains(from.Id) ? 1
        : 2;

    /// <summary>How many outputs or inputs of a device nothing uses.</summary>
    private int Room(DeviceNode device, bool isInput)
    {
        if (rooms.TryGetValue((device.Index, isInput), out var room))
        {
            return room;
        }

        foreach (var group in device.Groups.Where(group => isInput ? group.Kind == PortKind.Input : group.IsLineOutput))
        {
            for (var i = 0; i < group.Count; i++)
            {
                var at = device.First(group) + i;
                var isHeld = isInput ? show.Graph.Via(at) == HopKind.Cable : FallbackWriter.IsCabled(show.Graph, at);
                room += isHeld || show.DemandAt(at) is not null || show.MarkOf(at) is not null || task.IsAtLost(at) ? 0 : 1;
            }
        }

        rooms.Add((device.Index, isInput), room);
        return room;
    }

    /// <summary>Runs in which an output has a cable to something else.</summary>
    private IEnumerable<Placement> Cabled(DeviceNode device, DemandNode demand)
    {
        foreach (var group in device.Groups.Where(group => group.Kind == PortKind.Output))
        {
            for (var first = 0; first + demand.Width <= group.Count; first++)
            {
                var run = device.First(group) + first;
                if (Enumerable.Range(0, demand.Width).Any(position => FallbackWriter.IsCabled(show.Graph, run + position)))
                {
                    yield return new Placement { Demand = demand.Key, At = show.Graph.Address(run, demand.Width) };
                }
            }
        }
    }
}
