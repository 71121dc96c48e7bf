using RoutingRules.Model;
using RoutingRules.Planning.Comparing;

namespace RoutingRules.Planning.Changeovers;

/// <summary>Finds which plugs have to be pulled, put in or moved, in an order in which every place is free when its plug comes.</summary>
internal sealed class PlugMoves
{
    private readonly Pace pace;
    private readonly List<PlannedMove> moves = [];
    private readonly List<Plug> there;
    private readonly List<(Plug? From, Plug To)> coming = [];
    private readonly HashSet<Plug> inHand = [];
    private readonly ILookup<string, Plug> legs;

    private PlugMoves(ShowComparer shows, Pace pace)
    {
        this.pace = pace;
        there = PlugPlaces.Of(shows.Before, shows, isBefore: true);
        var wanted = PlugPlaces.Of(shows.After, shows, isBefore: false);
        legs = there.Concat(wanted).Where(plug => !plug.Key.IsFeed).ToLookup(plug => plug.Key.Id, StringComparer.Ordinal);
        var staying = wanted.Select(plug => (plug.Key, plug.At)).ToHashSet();
        var kept = there.Where(plug => staying.Contains((plug.Key, plug.At))).ToList();
        var keptKeys = kept.Select(plug => (plug.Key, plug.At)).ToHashSet();
        foreach (var plug in wanted.Where(plug => !keptKeys.Contains((plug.Key, plug.At))))
        {
            coming.Add((there.Find(old => old.Key == plug.Key && !kept.Contains(old)), plug));
        }

        var moving = coming.Select(entry => entry.From).ToHashSet();
        foreach (var plug in there.Where(plug => !kept.Contains(plug) && !moving.Contains(plug)).ToList())
        {
            Pull(plug);
        }
    }

    public static List<PlannedMove> Of(ShowComparer shows, Pace pace)
    {
        var plugs = new PlugMoves(shows, pace);
        plugs.MakeWay(shows.Before.Show.Document.Rig, shows.After.Show.Document.Rig);
        plugs.Run();
        return plugs.moves;
    }

    /// <summary>A plug that goes for good; when just one new plug takes its place, the two are one step.</summary>
    private void Pull(Plug plug)
    {
        there.Remove(plug);
        var next = coming.FindIndex(entry => entry.From is null && entry.To.At == plug.At);
        if (next >= 0 && !there.Exists(other => other.Overlaps(plug.At)))
        {
            var to = coming[next].To;
            coming.RemoveAt(next);
            there.Add(to);
            Add($"At {plug.At} pull {plug.Name} and plug {to.Name}{Equipment(to)}.", to, to, plug);
            return;
        }

        Add($"Pull {plug.Name} out of {plug.At}.", null, plug);
        moves[^1] = moves[^1] with { IsPull = true };
    }

    /// <summary>A plug whose connector a cable of the next act takes comes out before all cables, whatever it waits for.</summary>
    private void MakeWay(Rig before, Rig after)
    {
        var there = before.Cables.Select(cable => (cable.From, cable.To)).ToHashSet();
        var ends = after.Cables.Where(cable => !there.Contains((cable.From, cable.To))).SelectMany(cable => new[] { cable.From, cable.To }).ToList();
        for (var i = 0; i < coming.Count; i++)
        {
            if (coming[i].From is { } plug && ends.Exists(plug.Overlaps))
            {
                Hold(i);
                moves[^1] = moves[^1] with { IsPull = true };
            }
        }
    }

    /// <summary>A plug that is held in the hand until its place is free.</summary>
    private void Hold(int index)
    {
        var held = coming[index].From!;
        there.Remove(held);
        coming[index] = (null, coming[index].To);
        inHand.Add(coming[index].To);
        Add($"Pull {held.Name} out of {held.At} and keep it at hand.", null, held);
    }

    private void Run()
    {
        while (coming.Count > 0)
        {
            var next = coming.FindIndex(entry => !there.Exists(plug => plug != entry.From && plug.Overlaps(entry.To.At)));
            if (next < 0)
            {
                // All wait for one another: one plug has to be held in the hand for a moment.
                var stuck = coming.FindIndex(entry => entry.From is not null);
                if (stuck < 0)
                {
                    // The second show has two things at one place; the rules say so.
                    next = 0;
                }
                else
                {
                    Hold(stuck);
                    continue;
                }
            }

            var (from, to) = coming[next];
            coming.RemoveAt(next);
            there.Remove(from!);
            there.Add(to);
            if (from is null)
            {
                Add($"Plug {to.Name} into {to.At}{Equipment(to)}.", to, to);
                moves[^1] = moves[^1] with { IsNewPlug = !inHand.Contains(to) };
            }
            else
            {
                Add($"Move {to.Name} from {from.At} to {to.At}.", to, to, from);
            }
        }
    }

    private void Add(string text, Plug? comes, params Plug[] plugs) =>
        moves.Add(
            new PlannedMove
            {
                Phase = ChangeoverPhase.Stage,
                Place = plugs[0].At.Device,
                Text = text,
                Points = plugs.Select(plug => plug.At).Distinct().ToValueList(),
                Plugs = plugs
                    .Concat(plugs.Where(plug => !plug.Key.IsFeed).SelectMany(plug => legs[plug.Key.Id]))
                    .SelectMany(plug => Enumerable.Range(0, plug.At.Width).Select(i => plug.At[i]))
                    .Distinct()
                    .ToValueList(),
                NeedsPhantomOff =
                    comes?.Demand.Line?.Model.Phantom == PhantomNeed.Required
                    || plugs
                        .Where(plug => !plug.Key.IsFeed)
                        .SelectMany(plug => legs[plug.Key.Id])
                        .Any(leg => leg.Demand.Line!.Model.Phantom == PhantomNeed.Forbidden),
                Hazards = plugs.Any(plug => plug.IsInEar) ? ["Make sure that nobody wears this pack."] : default,
                Seconds = pace.SecondsToPlug * plugs.Length,
            }
        );

    private static string Equipment(Plug plug)
    {
        var parts = plug.Demand.Line?.Model is { } line
            ? new[] { line.Equipment, line.Stand, line.Position }
            : [plug.Demand.Feed!.Model.Position, plug.Demand.Feed.Model.Pack is { } pack ? $"pack {pack}" : null];
        var text = string.Join(", ", parts.Where(part => !string.IsNullOrEmpty(part)));
        return text.Length == 0 ? "" : $" ({text})";
    }
}
