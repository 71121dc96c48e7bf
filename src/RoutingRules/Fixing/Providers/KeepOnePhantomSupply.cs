using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Lines;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Fixing.Providers;

/// <summary>Of several inputs that power one split, leaves the first on. Unsafe: which leg is never unplugged only the crew knows.</summary>
internal sealed class KeepOnePhantomSupply : FixProvider
{
    public override string RuleId => "RR6005";

    public override ValueList<Fix> Propose(FixContext context, Finding finding)
    {
        var (first, width) = context.RunOf(finding, "split");
        var table = InputTable.Of(context.Facts);
        var off = new SortedSet<PointIndex>();
        for (var position = 0; position < width; position++)
        {
            AddOthers(off, On(context, table, first + position));
        }

        foreach (var line in context.Resolved.Lines)
        {
            for (var position = 0; finding.IdOf("line") == line.Model.Id.Value && position < line.Width; position++)
            {
                AddOthers(off, LineDelivery.Entries(context.Facts, line).SelectMany(run => On(context, table, run + position)).ToList());
            }
        }

        if (off.Count == 0)
        {
            return [];
        }

        var names = off.Select(input => context.Resolved.Graph.Address(input).ToString()).ToList();
        return
        [
            Fix.Of(
                $"Switch phantom power off at {Wording.Names(names, false)} and keep the first supply",
                FixSafety.Unsafe,
                InputEdits.SetPhantom(context, off, false),
                SwitchPhantomOff.Caution
            ),
        ];
    }

    private static void AddOthers(SortedSet<PointIndex> off, List<PointIndex> on)
    {
        for (var i = 1; i < on.Count; i++)
        {
            off.Add(on[i]);
        }
    }

    private static List<PointIndex> On(FixContext context, InputTable table, PointIndex entry)
    {
        var supplies = PhantomPath.Supplies(context.Facts, entry);
        supplies.RemoveAll(input => table.Phantom(input) != true);
        return supplies;
    }
}
