namespace RoutingRules.Fixing;

/// <summary>The text of an edited show.</summary>
public sealed record EditedText
{
    /// <summary>The text.</summary>
    public required ReadOnlyMemory<byte> Utf8 { get; init; }

    /// <summary>The change as a JSON Patch of the old text; null when it could not be told as one.</summary>
    public required JsonPatch? Patch { get; init; }

    /// <summary>True when the whole document was written anew, so that the layout of the old text is lost.</summary>
    public required bool IsRewritten { get; init; }
}
