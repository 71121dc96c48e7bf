using System.Text.Json;

namespace RoutingRules.Documents.Tables;

/// <summary>A member of a model type with a value of a type.</summary>
internal sealed class Member<TModel, TValue>(string name, Kind<TValue> kind, int index, bool required, TValue absent, Func<TModel, TValue> get, string doc)
    : Member<TModel>(name, kind, required, doc)
{
    private readonly JsonEncodedText encodedName = JsonEncodedText.Encode(name);

    /// <summary>The value read, or what its absence means.</summary>
    public TValue this[in Slots slots] => slots.Has(index) ? kind.Load(in slots[index]) : absent;

    public override void Write(Utf8JsonWriter json, TModel model)
    {
        if (IsSaid(model))
        {
            json.WritePropertyName(encodedName);
            kind.Write(json, get(model));
        }
    }

    public override bool IsSaid(TModel model) => Required || !EqualityComparer<TValue>.Default.Equals(get(model), absent);

    public override Unwritable? Check(TModel model) => IsSaid(model) ? kind.Check(get(model))?.Under(Name) : null;
}
