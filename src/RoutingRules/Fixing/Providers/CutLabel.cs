using System.Globalization;
using RoutingRules.Checking.Facts.Labels;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Fixing.Providers;

/// <summary>Cuts labels to what the device shows of them. Unsafe: a person finds a better short form.</summary>
internal sealed class CutLabel : FixProvider
{
    public override string RuleId => "RR7003";

    public override ValueList<Fix> Propose(FixContext context, Finding finding)
    {
        var graph = context.Resolved.Graph;
        var table = LabelTable.Of(context.Facts);
        var texts = new Dictionary<PointIndex, string>();
        var shown = 0;
        foreach (var entity in finding.Entities)
        {
            if (
                PointRange.TryParse(entity.Id, out var at, out _)
                && graph.Find(at, out var point) == ConnectionState.Connected
                && table.At(point) is { } label
                && LabelText.Limit(graph.DeviceOf(point), graph.GroupOf(point)) is { } limit
            )
            {
                shown = limit;
                texts[point] = LabelText.Cut(label.Text, limit).TrimEnd();
            }
        }

        var edits = LabelEdits.SetText(context, texts);
        return edits.IsEmpty
            ? []
            : [Fix.Of(string.Create(CultureInfo.InvariantCulture, $"Cut the labels to the {shown} characters that are shown"), FixSafety.Unsafe, edits)];
    }
}
