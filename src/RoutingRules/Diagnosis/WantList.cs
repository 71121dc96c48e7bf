using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Diagnosis;

/// <summary>What a show wants, point by point, as far as it says where.</summary>
internal static class WantList
{
    /// <summary>How many runs are looked at where the show leaves the choice.</summary>
    private const int MostPlaces = 32;

    /// <summary>The wants in the order of the demands; what does not resolve wants nothing.</summary>
    public static List<Want> Of(ResolvedShow show)
    {
        var wants = new List<Want>(show.Demands.Count);
        var plain = new Overlay(show.Graph, []);
        var clues = new Clues(show);
        foreach (var demand in show.Demands)
        {
            if (demand.Feed is { } feed)
            {
                if (feed.SourceState == ConnectionState.Connected && !feed.Source.IsNone)
                {
                    var likely = clues.PlacesOf(demand, feed.Source);
                    Add(wants, plain, demand, [.. PlacesOf(show, demand, feed).Union(likely)], [feed.Source]);
                    AddLikely(wants, plain, demand, likely, [feed.Source]);
                }
            }
            else if (demand.Line is { } line)
            {
                var sources = demand.IsPinned ? demand.Allowed : Runs(show, demand);
                for (var i = 0; i < line.Sinks.Count; i++)
                {
                    if (!line.Sinks[i].IsNone && !line.IsRepeated(i))
                    {
                        var likely = clues.SourcesOf(demand, line.Sinks[i]);
                        Add(wants, plain, demand, [line.Sinks[i]], [.. sources.Union(likely)], demand.IsPinned ? default : demand.Allowed);
                        AddLikely(wants, plain, demand, [line.Sinks[i]], likely);
                    }
                }
            }
        }

        return wants;
    }

    private static void Add(
        List<Want> wants,
        Overlay plain,
        DemandNode demand,
        ValueList<PointIndex> places,
        ValueList<PointIndex> sources,
        ValueList<PointIndex> others = default
    )
    {
        if (!places.IsEmpty && !sources.IsEmpty)
        {
            var met = Want.Meet(plain, places, sources, demand.Width);
            wants.Add(
                new Want
                {
                    Demand = demand,
                    Places = places,
                    Sources = sources,
                    Others = others,
                    MetAt = met,
                }
            );
        }
    }

    /// <summary>What clues say counts only as far as it is not so: nothing is kept from moving by its label.</summary>
    private static void AddLikely(List<Want> wants, Overlay plain, DemandNode demand, ValueList<PointIndex> places, ValueList<PointIndex> sources)
    {
        if (!places.IsEmpty && !sources.IsEmpty && Want.Meet(plain, places, sources, demand.Width).IsNone)
        {
            wants.Add(
                new Want
                {
                    Demand = demand,
                    Places = places,
                    Sources = sources,
                    IsLikely = true,
                }
            );
        }
    }

    private static ValueList<PointIndex> PlacesOf(ResolvedShow show, DemandNode demand, FeedNode feed)
    {
        var to = feed.Model.To[demand.Entry];
        if (to.At is { } at)
        {
            return
                at.Width == demand.Width
                && show.Graph.Find(at, out var first) == ConnectionState.Connected
                && show.Graph.GroupOf(first).Kind is not PortKind.Network
                ? [first]
                : default;
        }

        // A place behind a cable is the input there: the cable itself may be what is wrong.
        var places = new List<PointIndex>();
        foreach (var run in Runs(show, demand))
        {
            if (PinEdits.Names(to, show.Graph.DeviceOf(run)))
            {
                places.Add(run);
            }
        }

        foreach (var device in show.Devices)
        {
            if (to.Devices.Contains(device.Id) && !places.Exists(place => show.Graph.DeviceOf(place) == device))
            {
                AddInputs(places, show, demand, device);
            }
        }

        foreach (var run in places.Count > 0 ? default : Runs(show, demand))
        {
            places.Add(run);
        }

        return places.ToValueList();
    }

    /// <summary>The inputs of a device that no other feed reaches.</summary>
    private static void AddInputs(List<PointIndex> places, ResolvedShow show, DemandNode demand, DeviceNode device)
    {
        foreach (var group in device.Groups)
        {
            for (var i = 0; group.Kind == PortKind.Input && i + demand.Width <= group.Count && places.Count < MostPlaces; i += demand.Width)
            {
                var input = device.First(group) + i;
                var isFree = true;
                for (var position = 0; isFree && position < demand.Width; position++)
                {
                    isFree = show.Graph.Upstream(input + position) is var output && (output.IsNone || IsOpen(show, output, demand));
                }

                if (isFree)
                {
                    places.Add(input);
                }
            }
        }
    }

    private static bool IsOpen(ResolvedShow show, PointIndex point, DemandNode demand) => show.DemandAt(point) is not { } other || other == demand;

    /// <summary>Where it is now, then the runs that nothing else uses.</summary>
    private static ValueList<PointIndex> Runs(ResolvedShow show, DemandNode demand)
    {
        var free = new List<PointIndex>();
        if (!demand.Existing.IsNone)
        {
            free.Add(demand.Existing);
        }

        foreach (var run in demand.Allowed)
        {
            var isFree = run != demand.Existing && free.Count < MostPlaces;
            for (var position = 0; isFree && position < demand.Width; position++)
            {
                isFree = IsOpen(show, run + position, demand);
            }

            if (isFree)
            {
                free.Add(run);
            }
        }

        return free.ToValueList();
    }
}
