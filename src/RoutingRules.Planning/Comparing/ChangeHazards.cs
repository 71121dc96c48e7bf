using RoutingRules.Assignment.Explaining;
using RoutingRules.Checking.Catalogue;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;
using RoutingRules.Signal;

namespace RoutingRules.Planning.Comparing;

/// <summary>Finds the dangers of going from one show to another.</summary>
internal static class ChangeHazards
{
    public static ValueList<Finding> Find(ShowComparer shows) => Phantom(shows).Concat(Ears(shows)).ToValueList();

    private static IEnumerable<Finding> Phantom(ShowComparer shows)
    {
        var after = InputMap.Phantom(shows.After.Show.Document);
        foreach (var (at, isOn) in InputMap.Phantom(shows.Before.Show.Document).OrderBy(entry => entry.Key.ToString(), StringComparer.Ordinal))
        {
            var old = shows.Before.Graph.Find(at);
            var now = shows.After.Graph.Find(at);
            if (!isOn || old.IsNone || now.IsNone || after.ContainsKey(at) || shows.After.LineAt(now) is not { } line)
            {
                continue;
            }

            if (line.Line!.Model.Phantom != PhantomNeed.Required && !shows.IsSame(shows.Before.LineAt(old), line))
            {
                yield return RuleFinding.Of(
                    ChangeRules.PhantomCarriedOver,
                    $"Phantom power at {at} is on in the first show and the second says nothing about it, but '{line.DisplayName}' is plugged in "
                        + $"there then{(line.Line.Model.Phantom == PhantomNeed.Forbidden ? " and must not get it" : "")}.",
                    "",
                    Entity.Of("input", at),
                    Entity.Of("line", line.Line.Model.Id)
                );
            }
        }
    }

    private static IEnumerable<Finding> Ears(ShowComparer shows)
    {
        var changed = new Dictionary<PointIndex, Point>();
        foreach (var sink in shows.Before.Sinks())
        {
            var now = shows.After.Graph.Find(shows.Before.Graph.Address(sink));
            if (
                !now.IsNone
                && (shows.Before.Graph.GroupOf(sink).Kind == PortKind.Output || shows.Before.Show.Ears.IsEnd(sink))
                && shows.Before.LeadsToEars(sink)
                && shows.Before.Source(sink) is { } old
                && shows.After.Source(now) is { } source
                && old != source
                && !shows.After.CarriesEarMix(now)
            )
            {
                changed.Add(sink, source);
            }
        }

        foreach (var (sink, source) in changed)
        {
            if (!IsBehind(shows.Before.Graph, sink, changed))
            {
                yield return Ears(shows, sink, source);
            }
        }
    }

    /// <summary>True when a place before the point changes alike and is told already.</summary>
    private static bool IsBehind(SignalGraph graph, PointIndex point, Dictionary<PointIndex, Point> changed)
    {
        if (graph.IsLooping(point))
        {
            return false;
        }

        for (var at = graph.Upstream(point); !at.IsNone; at = graph.Upstream(at))
        {
            if (changed.TryGetValue(at, out var source) && source == changed[point])
            {
                return true;
            }
        }

        return false;
    }

    private static Finding Ears(ShowComparer shows, PointIndex sink, Point source)
    {
        var at = shows.Before.Graph.Address(sink);
        var feeds = shows.Before.FeedsAt(sink).ToList();
        var feed = shows.Before.Served(sink)?.Feed ?? feeds.Find(feed => feed.Model.Role == FeedRole.InEar) ?? feeds.FirstOrDefault();
        var ends = shows.Before.Show.Ears.Behind(sink);
        var end = ends.Count == 0 || ends[0] == sink ? "" : $" at {shows.Before.Graph.Address(ends[0])}";
        var was =
            feed is null ? $"goes into somebody's ears{end}"
            : feed.Model.Role == FeedRole.InEar ? $"feeds '{feed.DisplayName}'"
            : $"feeds '{feed.DisplayName}' ({feed.Model.Role}) into somebody's ears{end}";
        var serves = shows.After.FeedsAt(shows.After.Graph.Find(at)).FirstOrDefault();
        return RuleFinding.Of(
            ChangeRules.EarsGetAnotherSignal,
            $"{at} {was} in the first show and carries {source} in the second{(serves is null ? "" : $", as '{serves.DisplayName}' ({serves.Model.Role})")}.",
            "",
            Entity.Of("output", at),
            Entity.Of("source", source)
        );
    }
}
