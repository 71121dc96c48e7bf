using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Result;

/// <summary>Takes the phantom power and the gain of inputs with the lines that moved, and switches phantom power as the lines that moved in need it.</summary>
/// <remarks>
/// What the document says about an input whose line stays is never changed; where it says nothing about phantom power, what the line needs is written, if the
/// input can supply it. Which of the legs of a split supplies nobody can know here, so a split line is left alone.
/// </remarks>
internal static class InputFollower
{
    /// <summary>The settings of the inputs as they belong to the result.</summary>
    public static ValueList<InputSettings> Inputs(ResolvedShow before, ResolvedShow after)
    {
        var said = Said(before);
        var wanted = new SortedDictionary<PointIndex, InputSettings?>();
        var moves = before
            .Lines.Where(line => line.Model.From.Source is null && line.Model.From.At.Count < 2)
            .Select(line =>
                (Line: line, From: ResultDetails.Place(before, before.Demands[line.Demand]), To: ResultDetails.Place(after, before.Demands[line.Demand]))
            )
            .Where(move => !move.To.IsNone)
            .ToList();
        foreach (var (line, from, to) in moves.Where(move => !move.From.IsNone && move.From != move.To))
        {
            for (var position = 0; position < line.Width; position++)
            {
                wanted[from + position] = null;
            }
        }

        foreach (var (line, from, to) in moves)
        {
            for (var position = 0; position < line.Width; position++)
            {
                var isKept = from == to || from.IsNone;
                var old = said.GetValueOrDefault(isKept ? to + position : from + position);
                var phantom = Phantom(after, line, to + position, isKept ? old?.Phantom : null) ?? old?.Phantom;
                if (!isKept || phantom != old?.Phantom)
                {
                    wanted[to + position] = (old ?? new InputSettings { At = default }) with { Phantom = phantom };
                }
            }
        }

        return Written(after, wanted);
    }

    /// <summary>Whether phantom power is to be on for a line at an input; null where nothing follows from the line.</summary>
    private static bool? Phantom(ResolvedShow show, LineNode line, PointIndex at, bool? said) =>
        said is not null || !show.Graph.GroupOf(at).Model.Phantom
            ? null
            : line.Model.Phantom switch
            {
                PhantomNeed.Required => true,
                PhantomNeed.Forbidden => false,
                _ => null,
            };

    /// <summary>What the document says of each input; of several entries the first that says something counts.</summary>
    private static Dictionary<PointIndex, InputSettings> Said(ResolvedShow show)
    {
        var said = new Dictionary<PointIndex, InputSettings>();
        foreach (var settings in show.Document.Patch.Inputs)
        {
            for (var position = 0; show.Graph.Find(settings.At, out var first) == ConnectionState.Connected && position < settings.At.Width; position++)
            {
                said[first + position] = said.TryGetValue(first + position, out var known)
                    ? known with
                    {
                        Phantom = known.Phantom ?? settings.Phantom,
                        GainOwner = known.GainOwner ?? settings.GainOwner,
                        GainFollowers = known.GainOwner is null ? settings.GainFollowers : known.GainFollowers,
                    }
                    : settings;
            }
        }

        return said;
    }

    /// <summary>The entries of the document without the inputs that change, then those, neighbours with equal settings as one.</summary>
    private static ValueList<InputSettings> Written(ResolvedShow show, SortedDictionary<PointIndex, InputSettings?> wanted)
    {
        var written = new List<InputSettings>();
        foreach (var settings in show.Document.Patch.Inputs)
        {
            if (show.Graph.Find(settings.At, out var first) != ConnectionState.Connected)
            {
                written.Add(settings);
                continue;
            }

            written.AddRange(ResultRuns.Without(settings.At, position => wanted.ContainsKey(first + position)).Select(at => settings with { At = at }));
        }

        InputSettings? last = null;
        foreach (var (point, settings) in wanted)
        {
            var at = show.Graph.Address(point, 1);
            if (settings is not { } made || (made.Phantom is null && made.GainOwner is null && made.GainFollowers.IsEmpty && made.Extensions is null))
            {
                last = null;
            }
            else if (last is not null && ResultRuns.Follows(last.At, at) && made with { At = last.At } == last)
            {
                last = written[^1] = last with { At = ResultRuns.Joined(last.At, at) };
            }
            else
            {
                written.Add(last = made with { At = at });
            }
        }

        return written.ToValueList();
    }
}
