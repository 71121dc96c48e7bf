namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>Something that the document asks for or writes and that is not so in the patch.</summary>
public sealed record SheetGap
{
    /// <summary>What it is about: a feed, a line, a route.</summary>
    public required string Subject { get; init; }

    /// <summary>What is missing and where, in one or two sentences.</summary>
    public required string Text { get; init; }
}
