namespace RoutingRules.Reports.Answers;

/// <summary>How pages for people are written.</summary>
public enum PageFormat
{
    /// <summary>Plain text, lines of at most 100 characters, pages parted by form feeds.</summary>
    Text,

    /// <summary>Markdown with tables.</summary>
    Markdown,

    /// <summary>One HTML file without scripts that prints on A4 and Letter in black and white.</summary>
    Html,
}
