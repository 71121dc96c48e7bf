using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Planning.LineChecks;

/// <summary>Lets a show say where plugs are: cables, the places of feeds and lines, and what was said of their inputs and labels go with them.</summary>
internal static class PlugWriter
{
    /// <summary>Writes where plugs are.</summary>
    /// <param name="show">The show to write.</param>
    /// <param name="resolved">The same show, resolved.</param>
    /// <param name="map">Where they are.</param>
    /// <returns>Why that cannot be written; null when it was.</returns>
    public static string? Write(ShowRewriting show, ResolvedShow resolved, PlugMap map)
    {
        if (Torn(resolved, map) is { } torn)
        {
            return torn;
        }

        show.Each(ShowLists.Feeds, show.Show.Feeds, (feed, index) => [Moved(resolved, resolved.Feeds[index], map)]);
        show.Each(ShowLists.Lines, show.Show.Lines, (line, index) => [Moved(resolved, resolved.Lines[index], map)]);
        show.Each(ShowLists.Cables, show.Show.Rig.Cables, cable => Pieces(cable, map));
        show.Each(
            ShowLists.Inputs,
            show.Show.Patch.Inputs,
            settings => map.Touches(settings.At) ? map.Find(settings.At).ConvertAll(piece => settings with { At = piece.At }) : [settings]
        );
        show.Each(
            ShowLists.Labels,
            show.Show.Patch.Labels,
            label => map.Touches(label.At) ? map.Find(label.At).ConvertAll(piece => label with { At = piece.At }) : [label]
        );
        return null;
    }

    private static PointRange PlaceOf(ResolvedShow resolved, DemandNode demand) => resolved.Graph.Address(demand.Existing, demand.Width);

    private static string? Torn(ResolvedShow resolved, PlugMap map)
    {
        foreach (var demand in resolved.Demands.Where(demand => demand.Width > 1))
        {
            PointRange[] named =
                demand.Line is { } line ? [.. line.Model.From.At]
                : demand.Feed!.Model.To[demand.Entry].At is { } at ? [at]
                : [];
            PointRange[] runs = demand.Existing.IsNone ? named : [.. named, PlaceOf(resolved, demand)];
            if (Array.Find(runs, run => map.Touches(run) && map.FindWhole(run) is null) is { Width: > 0 } run)
            {
                return $"'{demand.DisplayName}' is a pair at {run}, and its sides would stand apart or crossed; a show cannot say that. "
                    + "Plug the two sides next to each other, left first.";
            }
        }

        return null;
    }

    private static List<Cable> Pieces(Cable cable, PlugMap map)
    {
        var isAtOutputs = map.Touches(cable.From);
        return !isAtOutputs && !map.Touches(cable.To)
            ? [cable]
            : map.Find(isAtOutputs ? cable.From : cable.To)
                .ConvertAll(piece =>
                    isAtOutputs
                        ? cable with
                        {
                            From = piece.At,
                            To = RunCuts.Part(cable.To, piece.From, piece.At.Width),
                        }
                        : cable with
                        {
                            From = RunCuts.Part(cable.From, piece.From, piece.At.Width),
                            To = piece.At,
                        }
                );
    }

    /// <summary>A feed goes where it went: to the input at the other end of the cable, else to the output at which its plug is found.</summary>
    private static Feed Moved(ResolvedShow resolved, FeedNode feed, PlugMap map)
    {
        var to = feed.Model.To.AsSpan().ToArray();
        for (var entry = 0; entry < to.Length; entry++)
        {
            var demand = resolved.Demands[feed.FirstDemand + entry];
            if (to[entry].At is { } at && IsOutput(resolved, at) && map.Touches(at))
            {
                to[entry] = to[entry] with { At = map.FindWhole(at) };
            }
            else if (to[entry].At is null && !demand.Existing.IsNone && map.Touches(PlaceOf(resolved, demand)) && IsOutput(resolved, PlaceOf(resolved, demand)))
            {
                var place = PlaceOf(resolved, demand);
                to[entry] = new Destination { At = AlongCable(resolved, place) ?? map.FindWhole(place), Extensions = to[entry].Extensions };
            }
        }

        var moved = to.ToValueList();
        return moved.Equals(feed.Model.To) ? feed.Model : feed.Model with { To = moved };
    }

    private static Line Moved(ResolvedShow resolved, LineNode line, PlugMap map)
    {
        var origin = line.Model.From;
        if (origin.At.Any(map.Touches))
        {
            return line.Model with { From = origin with { At = origin.At.Select(run => map.FindWhole(run) ?? run).ToValueList() } };
        }

        var demand = resolved.Demands[line.Demand];
        return
            origin.At.IsEmpty
            && origin.Source is null
            && !demand.Existing.IsNone
            && map.FindWhole(PlaceOf(resolved, demand)) is { } found
            && map.Touches(PlaceOf(resolved, demand))
            ? line.Model with
            {
                From = new LineOrigin { At = [found], Extensions = origin.Extensions },
            }
            : line.Model;
    }

    private static bool IsOutput(ResolvedShow resolved, PointRange run) =>
        resolved.Graph.Find(run[0]) is { IsNone: false } point && resolved.Graph.GroupOf(point).Kind == PortKind.Output;

    private static PointRange? AlongCable(ResolvedShow resolved, PointRange outputs)
    {
        foreach (var cable in resolved.Document.Rig.Cables)
        {
            var position = outputs.First - cable.From.First;
            if (MarkWriter.Holds(cable.From, outputs[0]) && position + outputs.Width <= cable.From.Width && position + outputs.Width <= cable.To.Width)
            {
                return RunCuts.Part(cable.To, position, outputs.Width);
            }
        }

        return null;
    }
}
