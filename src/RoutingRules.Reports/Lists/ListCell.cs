namespace RoutingRules.Reports.Lists;

/// <summary>A cell of a known column.</summary>
/// <param name="Member">The member it is of.</param>
/// <param name="Header">What the list calls the column.</param>
/// <param name="Text">What it says; an apostrophe against formulas is taken off.</param>
/// <param name="Line">The line on which it begins, from 1.</param>
internal sealed record ListCell(ListMember Member, string Header, string Text, int Line);
