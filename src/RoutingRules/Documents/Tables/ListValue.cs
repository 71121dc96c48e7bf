using System.Text.Json;

namespace RoutingRules.Documents.Tables;

/// <summary>A list that is only written by the engine, never read.</summary>
internal sealed class ListValue(ValueShape element, int min = 0, int max = int.MaxValue) : ValueShape
{
    public override void WriteKeywords(Utf8JsonWriter json, SchemaText schema) => schema.WriteList(json, element, min, max, unique: false);
}
