using System.Text.Json;

namespace RoutingRules.Documents.Tables;

/// <summary>How a value is read.</summary>
internal abstract class Kind : ValueShape
{
    /// <summary>Reads the value at the current token and leaves the reader at its last token, whether it was good or not.</summary>
    /// <returns>False when it was bad; the problem has then been reported.</returns>
    public abstract bool TryRead(ref Utf8JsonReader json, ReadSession session, out Slot slot);
}
