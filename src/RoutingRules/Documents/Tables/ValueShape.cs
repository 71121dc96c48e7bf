using System.Text.Json;

namespace RoutingRules.Documents.Tables;

/// <summary>What a value looks like in JSON, as far as a schema can say it.</summary>
internal abstract class ValueShape
{
    /// <summary>The name under which schemas define it once; null to write it at each place.</summary>
    public virtual string? DefinitionName => null;

    /// <summary>Writes the keywords, without the enclosing braces.</summary>
    public abstract void WriteKeywords(Utf8JsonWriter json, SchemaText schema);
}
