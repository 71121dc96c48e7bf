namespace RoutingRules.Fixing;

/// <summary>A JSON Patch that cannot be applied to a document, or a test of it that failed.</summary>
public sealed class JsonPatchException : Exception
{
    /// <summary>An exception.</summary>
    public JsonPatchException()
        : base("The patch cannot be applied.") { }

    /// <summary>An exception with a message.</summary>
    public JsonPatchException(string message)
        : base(message) { }

    /// <summary>An exception with a message and its cause.</summary>
    public JsonPatchException(string message, Exception innerException)
        : base(message, innerException) { }
}
