using System.Text.Json;

namespace RoutingRules.Reading.Tables;

/// <summary>How a value of a type is read and written.</summary>
internal abstract class Kind<T> : Kind
{
    /// <summary>The value that <see cref="Kind.TryRead"/> put into a slot.</summary>
    public abstract T Load(in Slot slot);

    public abstract void Write(Utf8JsonWriter json, T value);
}
