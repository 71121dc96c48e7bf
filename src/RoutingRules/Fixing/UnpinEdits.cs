using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Fixing;

/// <summary>Takes points out of what a show asks for: what names a connector may stand at any of the same device afterwards.</summary>
internal static class UnpinEdits
{
    /// <summary>Frees what names a point and is wanted, as far as the device alone says as much: a point that only its name allows stays named.</summary>
    /// <param name="show">The show.</param>
    /// <param name="isWanted">Says which demands.</param>
    /// <param name="resolve">Resolves a show.</param>
    public static UnpinResult Of(ResolvedShow show, Func<DemandNode, bool> isWanted, Func<Show, ResolvedShow> resolve)
    {
        var tried = Of(show, isWanted);
        var free = resolve(tried.Show).Demands.ToDictionary(demand => demand.Key, demand => demand.Allowed);
        return
            Of(show, demand => isWanted(demand) && demand.Allowed.All(run => free[demand.Key].Contains(run))) is var result && result.Freed.Equals(tried.Freed)
            ? tried
            : result with
            {
                Left = show
                    .Demands.Where(demand => tried.Left.Contains(demand.Key) || tried.Freed.Any(place => place.Demand == demand.Key))
                    .Select(demand => demand.Key)
                    .Where(key => !result.Freed.Any(place => place.Demand == key))
                    .ToValueList(),
            };
    }

    private static UnpinResult Of(ResolvedShow show, Func<DemandNode, bool> isWanted)
    {
        var (edits, freed, left) = (new List<ShowEdit>(), new List<PinnedPlace>(), new List<string>());
        foreach (var feed in show.Feeds)
        {
            var to = feed.Model.To.ToArray();
            for (var entry = 0; entry < to.Length; entry++)
            {
                var demand = show.Demands[feed.FirstDemand + entry];
                if (to[entry].At is { } at && isWanted(demand))
                {
                    to[entry] = new Destination { Devices = [at.Device], Extensions = to[entry].Extensions };
                    freed.Add(new PinnedPlace { Demand = demand.Key, At = at });
                }
            }

            var after = to.ToValueList();
            if (!after.Equals(feed.Model.To))
            {
                edits.Add(ShowEdit.Replace(ShowLists.Feeds, feed.Index, feed.Model, feed.Model with { To = after }));
            }
        }

        foreach (var line in show.Lines)
        {
            var demand = show.Demands[line.Demand];
            var from = line.Model.From;
            if (from.At.IsEmpty || !isWanted(demand))
            {
                continue;
            }

            // A split names each of its legs; let free, it would be one plug.
            if (from.At.Count > 1)
            {
                left.Add(demand.Key);
                continue;
            }

            var loose = line.Model with
            {
                From = new LineOrigin { Devices = [from.At[0].Device], Extensions = from.Extensions },
            };
            edits.Add(ShowEdit.Replace(ShowLists.Lines, line.Index, line.Model, loose));
            freed.Add(new PinnedPlace { Demand = demand.Key, At = from.At[0] });
        }

        return new UnpinResult
        {
            Show = edits.Aggregate(show.Document, static (changed, edit) => edit.Apply(changed)!),
            Edits = edits.ToValueList(),
            Freed = freed.ToValueList(),
            Left = left.ToValueList(),
        };
    }
}
