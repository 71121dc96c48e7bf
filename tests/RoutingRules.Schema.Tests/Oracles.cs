using System.Text;
using System.Text.Json;
using Json.Schema;
using RoutingRules.Documents;
using RoutingRules.Documents.Formats;

namespace RoutingRules.Schema.Tests;

/// <summary>Three judges of one document that know nothing of each other: the reader and two schema validators.</summary>
internal static class Oracles
{
    private static readonly Dictionary<SchemaKind, JsonSchema> Schemas = Enum.GetValues<SchemaKind>()
        .ToDictionary(kind => kind, kind => JsonSchema.FromText(RoutingSchemas.Text(kind)));

    /// <summary>Whether the reader takes the document.</summary>
    public static bool Reader(SchemaKind kind, string text)
    {
        var bytes = Encoding.UTF8.GetBytes(text);
        return kind switch
        {
            SchemaKind.Show => ShowReader.Read(bytes).IsUsable,
            SchemaKind.DeviceProfile => ProfileReader.Read(bytes).IsUsable,
            SchemaKind.Config => ConfigReader.Read(bytes).IsUsable,
            SchemaKind.Waivers => WaiverReader.Read(bytes).IsUsable,
            SchemaKind.Run => RunningOrderReader.Read(bytes).IsUsable,
            SchemaKind.Baseline => BaselineReader.Read(bytes).IsUsable,
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Reports are not read."),
        };
    }

    /// <summary>Whether NJsonSchema takes it.</summary>
    public static bool First(SchemaKind kind, string text) => SchemaValidator.Validate(kind, Encoding.UTF8.GetBytes(text)).Count == 0;

    /// <summary>Whether JsonSchema.Net takes it.</summary>
    public static bool Second(SchemaKind kind, string text)
    {
        using var document = JsonDocument.Parse(text, new JsonDocumentOptions { MaxDepth = 100 });
        return Schemas[kind].Evaluate(document.RootElement).IsValid;
    }
}
