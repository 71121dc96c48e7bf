using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Answers;

/// <summary>Finds devices that could stand in where the document allows no place that is left.</summary>
/// <remarks>
/// A device like the one a demand was at, or a stage box, that its source still reaches: in the same zone first, then in one that is near, then in the order of
/// the rig. Each demand is given one device with room, so that the search stays small.
/// </remarks>
internal sealed class FallbackPlaces(ResolvedShow show, FallbackTask task)
{
    private readonly Dictionary<(int Device, bool IsInput), int> rooms = [];

    /// <summary>A show in which some demands may go to a device that could stand in. Separations no longer count: better on one supply with another than silent.</summary>
    /// <param name="document">The show to go on from.</param>
    /// <param name="demands">The demands, the most important first.</param>
    /// <param name="choice">Which of the devices with room is taken, from 0.</param>
    /// <param name="most">How many demands at most.</param>
    public (Show Widened, List<Placement> Avoid, List<DemandNode> Asked) Widen(Show document, List<DemandNode> demands, int choice, int most)
    {
        rooms.Clear();
        document = document with { Feeds = document.Feeds.Select(feed => feed with { SeparateFrom = [] }).ToValueList() };
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
                document = document with { Lines = ShowChanges.Replace(document.Lines, demand.Line.Index, known with { From = new LineOrigin { Devices = [device.Id] } }) };
            }
        }

        return (document, avoid, asked);
    }

    private DeviceNode? Take(DemandNode demand, int choice)
    {
        var old = show.Graph.DeviceOf(demand.Existing);
        var isInput = demand.Line is not null;
        foreach (var device in show.Devices
            .Where(device => !task.Lost.Devices[device.Index] && (device.Profile.Kind == old.Profile.Kind || device.Profile.Kind == DeviceKind.StageBox) && task.IsReached(demand, device))
            .OrderBy(device => Distance(old, device)).ThenBy(device => device.Profile.Kind == old.Profile.Kind ? 0 : 1).ThenBy(device => device.Index))
        {
            if (Room(device, isInput) >= demand.Width && choice-- == 0)
            {
                rooms[(device.Index, isInput)] -= demand.Width;
                return device;
            }
        }

        return null;
    }

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
                var isHeld = isInput ? show.Graph.Via(at) == HopKind.Cable : FallbackWriter.Cabled(show.Graph, at) is not null;
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
                if (Enumerable.Range(0, demand.Width).Any(position => FallbackWriter.Cabled(show.Graph, run + position) is not null))
                {
                    yield return new Placement { Demand = demand.Key, At = show.Graph.Address(run, demand.Width) };
                }
            }
        }
    }
}
