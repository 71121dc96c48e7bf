using RoutingRules.Documents.Formats;
using RoutingRules.Reports.Schemas;

namespace RoutingRules.Schema;

/// <summary>The published schemas as text, as they stand in the folder <c>schema</c>.</summary>
public static class RoutingSchemas
{
    /// <summary>The schema of shows.</summary>
    public static string Show => Text(SchemaKind.Show);

    /// <summary>The schema of device profiles that stand alone.</summary>
    public static string DeviceProfile => Text(SchemaKind.DeviceProfile);

    /// <summary>The schema of configurations.</summary>
    public static string Config => Text(SchemaKind.Config);

    /// <summary>The schema of the JSON report.</summary>
    public static string Report => Text(SchemaKind.Report);

    /// <summary>The schema of lists of waivers.</summary>
    public static string Waivers => Text(SchemaKind.Waivers);

    /// <summary>The schema of baselines.</summary>
    public static string Baseline => Text(SchemaKind.Baseline);

    /// <summary>The schema of answers to why a feed or a line is where it is.</summary>
    public static string Why => Text(SchemaKind.Why);

    /// <summary>The schema of running orders.</summary>
    public static string Run => Text(SchemaKind.Run);

    /// <summary>The schema of comparisons of two shows.</summary>
    public static string Comparison => Text(SchemaKind.Comparison);

    /// <summary>The schema of changeovers.</summary>
    public static string Changeover => Text(SchemaKind.Changeover);

    /// <summary>The schema of answers to what each loss does to a show.</summary>
    public static string Impact => Text(SchemaKind.Impact);

    /// <summary>The schema of what mending a show came to.</summary>
    public static string Fix => Text(SchemaKind.Fix);

    /// <summary>The schema of accounts of lists that were read into a show.</summary>
    public static string Import => Text(SchemaKind.Import);

    /// <summary>The schema of a kind of document.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="kind"/> is no kind.</exception>
    public static string Text(SchemaKind kind)
    {
        using var resource = typeof(RoutingSchemas).Assembly.GetManifestResourceStream(SchemaGenerator.FileName(kind))!;
        using var reader = new StreamReader(resource);
        return reader.ReadToEnd();
    }
}
