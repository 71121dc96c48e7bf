using System.Text.Json;

namespace RoutingRules.Reports.FindingReports;

/// <summary>A piece of a document that a rule finds fault with, and one that it passes.</summary>
/// <remarks>Written from the fixtures of the rules' own tests, which hold the file to them.</remarks>
/// <param name="Says">What the rule says about the bad one.</param>
/// <param name="Bad">The bad one as JSON; what stands around it is left out.</param>
/// <param name="Good">One that passes; null where what makes it pass stands elsewhere in the document.</param>
internal sealed record RuleExample(string Says, string Bad, string? Good)
{
    /// <summary>The name of the resource that holds the examples.</summary>
    public const string Resource = "RoutingRules.Reports.FindingReports.RuleExamples.json";

    private static readonly Dictionary<string, RuleExample> All = Read();

    /// <summary>The example of a rule; null for rules without one, such as those of plugins.</summary>
    public static RuleExample? Of(string rule) => All.GetValueOrDefault(rule);

    private static Dictionary<string, RuleExample> Read()
    {
        using var stream = typeof(RuleExample).Assembly.GetManifestResourceStream(Resource)!;
        using var document = JsonDocument.Parse(stream);
        var all = new Dictionary<string, RuleExample>(StringComparer.Ordinal);
        foreach (var rule in document.RootElement.EnumerateObject())
        {
            var good = rule.Value.TryGetProperty("good", out var passing) ? passing.GetString() : null;
            all.Add(rule.Name, new RuleExample(rule.Value.GetProperty("says").GetString()!, rule.Value.GetProperty("bad").GetString()!, good));
        }

        return all;
    }
}
