namespace RoutingRules.Reports.Sheets.Pages;

/// <summary>How a line of a cell looks.</summary>
internal enum PageLineStyle
{
    Plain,

    /// <summary>What is looked up, not patched: smaller where the writer has type.</summary>
    Note,

    /// <summary>What the eye looks for first.</summary>
    Strong,

    /// <summary>A box to tick before the text.</summary>
    Tick,

    /// <summary>A mark in a frame.</summary>
    Mark,

    /// <summary>A mark that stops the work.</summary>
    Stop,

    /// <summary>A mark that something differs from the older revision.</summary>
    Change,

    /// <summary>A bar, filled by a share, before the text.</summary>
    Bar,
}
