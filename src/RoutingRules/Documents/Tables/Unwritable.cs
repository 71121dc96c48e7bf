namespace RoutingRules.Documents.Tables;

/// <summary>Something in a value made by code that no document can say.</summary>
/// <param name="Pointer">Where it stands below the value, as a JSON Pointer; empty for the value itself.</param>
/// <param name="Message">What is wrong, as the end of a sentence that begins with the place.</param>
internal sealed record Unwritable(string Pointer, string Message)
{
    public static Unwritable Of(string message) => new("", message);

    /// <summary>The same, seen from the object or list that holds the value.</summary>
    public Unwritable Under(string step) => this with { Pointer = $"/{step}{Pointer}" };
}
