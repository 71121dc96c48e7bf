using System.Text.Json;

namespace RoutingRules.Documents.Tables;

/// <summary>A member of a model type, whatever its value type.</summary>
internal abstract class Member<TModel>(string name, Kind kind, bool required, string doc) : MemberShape(name, kind, required, doc)
{
    public Kind Kind { get; } = kind;

    /// <summary>Writes name and value, or nothing when the value is what its absence means.</summary>
    public abstract void Write(Utf8JsonWriter json, TModel model);

    /// <summary>True when the member is written: it must be there or says something else than its absence.</summary>
    public abstract bool IsSaid(TModel model);

    /// <summary>What a reader would refuse of its value.</summary>
    public abstract Unwritable? Check(TModel model);
}
