using System.Text.Json;

namespace RoutingRules.Documents.Tables;

/// <summary>A text that is only written by the engine, never read.</summary>
internal sealed class AnyText : ValueShape
{
    public override void WriteKeywords(Utf8JsonWriter json, SchemaText schema) => json.WriteString("type", "string");
}
