using RoutingRules.Checking.Facts.Labels;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Fixing.Providers;

/// <summary>Labels outputs and channels as the source they carry. Unsafe: the other label, or the patch, may be the one that is wrong.</summary>
internal sealed class CopyLabel : FixProvider
{
    public override string RuleId => "RR7005";

    public override ValueList<Fix> Propose(FixContext context, Finding finding)
    {
        var (first, width) = context.RunOf(finding, "point");
        var (source, _) = context.RunOf(finding, "source");
        var table = LabelTable.Of(context.Facts);
        var texts = new Dictionary<PointIndex, string>();
        for (var position = 0; position < width; position++)
        {
            if (table.At(source + position) is { } label)
            {
                texts[first + position] = label.Text;
            }
        }

        var edits = LabelEdits.SetText(context, texts);
        return edits.IsEmpty
            ? []
            :
            [
                Fix.Of(
                    $"Label {finding.IdOf("point")} as {finding.IdOf("source")}",
                    FixSafety.Unsafe,
                    edits,
                    "See first that the patch is right and not the label."
                ),
            ];
    }
}
