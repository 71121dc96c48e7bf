using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Fixing.Providers;

/// <summary>Takes the second of two equal entries of a line out. Safe, because it counts for nothing.</summary>
internal sealed class TakeOutRepeatedPoint : FixProvider
{
    public override string RuleId => "RR1110";

    public override ValueList<Fix> Propose(FixContext context, Finding finding)
    {
        var index = finding.Number(1);
        var lines = context.Show.Lines;
        if (index < 0 || index >= lines.Count)
        {
            return [];
        }

        var line = lines[index];
        var isSink = finding.Number(3) is var later && later >= 0;
        later = isSink ? later : finding.Number(4);
        var list = isSink ? line.To : line.From.At;
        if (later <= 0 || later >= list.Count || !list.Take(later).Contains(list[later]))
        {
            return
            [
                Fix.Manual($"Decide what line '{line.Id}' shall reach", "Write the point that was meant in one of the two entries", "Take one of the two out"),
            ];
        }

        var kept = list.Where((_, i) => i != later).ToValueList();
        var mended = isSink ? line with { To = kept } : line with { From = line.From with { At = kept } };
        return [Fix.Of($"Take the second {list[later]} out of line '{line.Id}'", FixSafety.Safe, [ShowEdit.Replace(ShowLists.Lines, index, line, mended)])];
    }
}
