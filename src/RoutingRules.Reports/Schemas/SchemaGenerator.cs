using RoutingRules.Documents.Formats;
using RoutingRules.Documents.Tables;

namespace RoutingRules.Reports.Schemas;

/// <summary>Writes the published schemas from the same tables that drive the readers and writers.</summary>
/// <remarks>
/// JSON Schema, draft 7, with a small set of keywords that validators agree on. What a schema cannot say stays with the readers: members written twice,
/// half surrogate pairs, ranges that run backwards, days that are not in the calendar, limits of size, depth and list length.
/// </remarks>
public static class SchemaGenerator
{
    /// <summary>The schema as JSON text with LF and a line break at the end; the same text for the same version of the library.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="kind"/> is no kind.</exception>
    public static string Generate(SchemaKind kind) =>
        SchemaText.Write(
            Id(kind),
            kind switch
            {
                SchemaKind.Show => ShowTable.Show.Shape,
                SchemaKind.DeviceProfile => ProfileTables.Profile.Shape,
                SchemaKind.Config => ConfigTable.Config.Shape,
                SchemaKind.Waivers => WaiverTables.Waivers.Shape,
                SchemaKind.Baseline => WaiverTables.Baseline.Shape,
                SchemaKind.Why => WhyShape.Why,
                SchemaKind.Run => RunningOrderTable.Run.Shape,
                SchemaKind.Comparison => ComparisonShape.Comparison,
                SchemaKind.Changeover => ChangeoverShape.Changeover,
                SchemaKind.Impact => ImpactShape.Impact,
                SchemaKind.Fix => FixShape.Fix,
                SchemaKind.Import => ImportShape.Import,
                _ => ReportShape.Report,
            }
        );

    /// <summary>The schema's <c>$id</c>, such as <c>urn:routing-rules:show:1</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="kind"/> is no kind.</exception>
    public static string Id(SchemaKind kind) => $"urn:routing-rules:{Name(kind)}:1";

    /// <summary>The name of the schema's file, such as <c>show.schema.json</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="kind"/> is no kind.</exception>
    public static string FileName(SchemaKind kind) => $"{Name(kind)}.schema.json";

    private static string Name(SchemaKind kind) =>
        kind switch
        {
            SchemaKind.Show => "show",
            SchemaKind.DeviceProfile => "device-profile",
            SchemaKind.Config => "config",
            SchemaKind.Report => "report",
            SchemaKind.Waivers => "waivers",
            SchemaKind.Baseline => "baseline",
            SchemaKind.Why => "why",
            SchemaKind.Run => "run",
            SchemaKind.Comparison => "comparison",
            SchemaKind.Changeover => "changeover",
            SchemaKind.Impact => "impact",
            SchemaKind.Fix => "fix",
            SchemaKind.Import => "import",
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind of document."),
        };
}
