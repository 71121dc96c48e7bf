using System.Text.Json;

namespace RoutingRules.Documents.Tables;

/// <summary>An object that is only written by the engine, never read.</summary>
internal sealed class ObjectValue(ObjectShape shape) : ValueShape
{
    public override string? DefinitionName => shape.Definition;

    public override void WriteKeywords(Utf8JsonWriter json, SchemaText schema) => schema.WriteDescribedObject(json, shape);
}
