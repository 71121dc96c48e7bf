using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Lines;

/// <summary>The single points at which lines are plugged in, with the inputs that could power each.</summary>
internal static class LineInputs
{
    /// <summary>
    /// One element for each line with a phantom need and each position of it: all its entries (several for a split) and all inputs that could power them.
    /// </summary>
    public static IEnumerable<(LineNode Line, List<PointIndex> Entries, List<PointIndex> Supplies)> Of(RuleContext context, PhantomNeed need)
    {
        foreach (var line in context.Lines)
        {
            if (line.Model.Phantom != need || line.Model.From.Source is not null)
            {
                continue;
            }

            for (var position = 0; position < line.Width; position++)
            {
                var runs = LineDelivery.Entries(context, line);
                var entries = new List<PointIndex>(runs.Count);
                foreach (var run in runs)
                {
                    entries.Add(run + position);
                }

                if (entries.Count > 0)
                {
                    yield return (line, entries, SuppliesOf(context, line, position));
                }
            }
        }
    }

    /// <summary>All inputs that could power a position of a line, from 0.</summary>
    public static List<PointIndex> SuppliesOf(RuleContext context, LineNode line, int position)
    {
        var runs = LineDelivery.Entries(context, line);
        var supplies = new List<PointIndex>(runs.Count);
        foreach (var run in runs)
        {
            PhantomPath.AddSupplies(context, run + position, supplies);
        }

        return supplies;
    }

    /// <summary>The names of lines, each once.</summary>
    public static string Names(IEnumerable<LineNode> lines) => Wording.List([.. lines.Distinct().Select(line => $"'{line.DisplayName}'")]);
}
