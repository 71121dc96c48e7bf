using System.Globalization;
using RoutingRules.Assignment.Explaining;
using RoutingRules.Checking.Catalogue;
using RoutingRules.Model;
using RoutingRules.Planning.Changeovers;
using RoutingRules.Rules;

namespace RoutingRules.Planning.RunningOrders;

/// <summary>Finds what is wrong with a running order itself.</summary>
internal static class RunningOrderFindings
{
    private const int SecondsPerMinute = 60;

    public static ValueList<Finding> Of(RunningOrder order, IReadOnlyList<RunningOrderChangeover> changeovers) =>
        [.. References(order), .. Locked(order), .. Moved(order, changeovers), .. Order(order), .. Packs(order), .. Times(changeovers)];

    private static IEnumerable<Finding> References(RunningOrder order)
    {
        var feeds = order.Feeds.Select(feed => feed.Id.Value).ToHashSet(StringComparer.Ordinal);
        var lines = order.Lines.Select(line => line.Id.Value).ToHashSet(StringComparer.Ordinal);
        for (var i = 0; i < order.Locked.Count; i++)
        {
            if (!feeds.Contains(order.Locked[i].Value))
            {
                yield return RuleFinding.Of(
                    RunningOrderRules.RunReferenceUnknown,
                    $"'{order.Locked[i]}' is locked, but the house has no such feed.",
                    At($"/locked/{i}"),
                    Entity.Of("feed", order.Locked[i])
                );
            }
        }

        for (var a = 0; a < order.Acts.Count; a++)
        {
            var act = order.Acts[a];
            for (var i = 0; i < act.Without.Count; i++)
            {
                if (!feeds.Contains(act.Without[i]) && !lines.Contains(act.Without[i]))
                {
                    yield return RuleFinding.Of(
                        RunningOrderRules.RunReferenceUnknown,
                        $"'{act.DisplayName}' does without '{act.Without[i]}', but the house has no such feed or line.",
                        At($"/acts/{a}/without/{i}"),
                        Entity.Of("act", act.Id),
                        Entity.Of("name", act.Without[i])
                    );
                }
            }
        }
    }

    private static IEnumerable<Finding> Locked(RunningOrder order)
    {
        var locked = order.Locked.ToHashSet();
        for (var a = 0; a < order.Acts.Count; a++)
        {
            var act = order.Acts[a];
            for (var i = 0; i < act.Feeds.Count; i++)
            {
                if (locked.Contains(act.Feeds[i].Id))
                {
                    yield return Changed(act, act.Feeds[i].Id, "writes it anew; the house's is used", At($"/acts/{a}/feeds/{i}"));
                }
            }

            for (var i = 0; i < act.Without.Count; i++)
            {
                if (locked.Contains(new Id<Feed>(act.Without[i])))
                {
                    yield return Changed(act, new Id<Feed>(act.Without[i]), "does without it; it stays", At($"/acts/{a}/without/{i}"));
                }
            }
        }
    }

    private static IEnumerable<Finding> Moved(RunningOrder order, IReadOnlyList<RunningOrderChangeover> changeovers)
    {
        var locked = order.Locked.Select(id => id.Value).ToHashSet(StringComparer.Ordinal);
        foreach (var changeover in changeovers)
        {
            foreach (var change in changeover.Comparison.Demands.Where(change => change.IsFeed && change.Before is not null && change.Before != change.After))
            {
                var id = change.Demand.Split('/')[0];
                if (locked.Contains(id))
                {
                    yield return Changed(
                        changeover.To,
                        new Id<Feed>(id),
                        change.After is null ? $"has it nowhere; it was at {change.Before}" : $"has it at {change.After}; it was at {change.Before}",
                        ""
                    );
                }
            }
        }
    }

    private static Finding Changed(Act act, Id<Feed> feed, string what, string pointer) =>
        RuleFinding.Of(
            RunningOrderRules.LockedFeedChanged,
            $"'{feed}' is locked, but '{act.DisplayName}' {what}.",
            pointer,
            Entity.Of("act", act.Id),
            Entity.Of("feed", feed)
        );

    private static IEnumerable<Finding> Order(RunningOrder order)
    {
        var seen = new HashSet<Id<Act>>();
        (DateOnly? Date, TimeOnly Start)? last = null;
        for (var a = 0; a < order.Acts.Count; a++)
        {
            var act = order.Acts[a];
            if (!seen.Add(act.Id))
            {
                yield return RuleFinding.Of(
                    RunningOrderRules.ActsOutOfOrder,
                    $"Two acts have the id '{act.Id}'.",
                    At($"/acts/{a}/id"),
                    Entity.Of("act", act.Id)
                );
            }

            if (act.Start is not { } start)
            {
                continue;
            }

            var now = (Date: act.Date ?? order.Date, Start: start);
            if (last is { } before && (now.Date < before.Date || (now.Date == before.Date && now.Start <= before.Start)))
            {
                yield return RuleFinding.Of(
                    RunningOrderRules.ActsOutOfOrder,
                    $"'{act.DisplayName}' begins at {Time(start)}, not after the act before, which begins at {Time(before.Start)}.",
                    At($"/acts/{a}/start"),
                    Entity.Of("act", act.Id)
                );
            }

            last = now;
        }
    }

    private static IEnumerable<Finding> Packs(RunningOrder order)
    {
        foreach (var act in (IEnumerable<Act>)order.Acts)
        {
            var show = ActComposer.Compose(order, act, order.Patch);
            foreach (var pack in show.Feeds.Where(feed => !string.IsNullOrEmpty(feed.Pack)).GroupBy(feed => feed.Pack!, StringComparer.Ordinal))
            {
                var people = pack.Select(PackMoves.Wearer).Distinct(StringComparer.Ordinal).ToList();
                if (people.Count > 1)
                {
                    yield return RuleFinding.Of(
                        RunningOrderRules.PackUsedTwice,
                        $"In '{act.DisplayName}' pack {pack.Key} is for {string.Join(" and for ", people)}.",
                        "",
                        Entity.Of("act", act.Id),
                        Entity.Of("pack", pack.Key)
                    );
                }
            }
        }
    }

    private static IEnumerable<Finding> Times(IReadOnlyList<RunningOrderChangeover> changeovers)
    {
        foreach (var changeover in changeovers)
        {
            var needed = changeover.Plan.SecondsAfterTheActBefore;
            if (changeover.To.ChangeoverMinutes is { } minutes && needed > minutes * SecondsPerMinute)
            {
                yield return RuleFinding.Of(
                    RunningOrderRules.ChangeoverTooShort,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"The changeover to '{changeover.To.DisplayName}' takes about {(needed + SecondsPerMinute - 1) / SecondsPerMinute} minutes "
                            + $"with one person at each place, and there are {minutes}."
                    ),
                    "",
                    Entity.Of("act", changeover.To.Id)
                );
            }
        }
    }

    private static string Time(TimeOnly time) => time.ToString("HH:mm", CultureInfo.InvariantCulture);

    private static string At(FormattableString pointer) => FormattableString.Invariant(pointer);
}
