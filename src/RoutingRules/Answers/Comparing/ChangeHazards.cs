using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;

namespace RoutingRules.Answers.Comparing;

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
                    $"Phantom power at {at} is on in the first show and the second says nothing about it, but '{line.DisplayName}' is plugged in there then{(line.Line.Model.Phantom == PhantomNeed.Forbidden ? " and must not get it" : "")}.",
                    "",
                    Entity.Of("input", at),
                    Entity.Of("line", line.Line.Model.Id));
            }
        }
    }

    private static IEnumerable<Finding> Ears(ShowComparer shows)
    {
        foreach (var sink in shows.Before.Sinks())
        {
            var at = shows.Before.Graph.Address(sink);
            var now = shows.After.Graph.Find(at);
            if (now.IsNone
                || shows.Before.Graph.GroupOf(sink).Kind != PortKind.Output
                || shows.Before.Served(sink)?.Feed is not { } feed
                || feed.Model.Role != FeedRole.InEar
                || shows.After.Source(now) is not { } source
                || shows.Before.Source(sink) == source
                || shows.After.LeadsToEars(now))
            {
                continue;
            }

            var serves = shows.After.Served(now)?.Feed;
            yield return RuleFinding.Of(
                ChangeRules.EarsGetAnotherSignal,
                $"{at} feeds '{feed.DisplayName}' in the first show and carries {source} in the second{(serves is null ? "" : $", as '{serves.DisplayName}' ({serves.Model.Role})")}.",
                "",
                Entity.Of("output", at),
                Entity.Of("source", source));
        }
    }
}
