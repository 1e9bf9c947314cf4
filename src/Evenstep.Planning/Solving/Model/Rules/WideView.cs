namespace Evenstep.Planning.Solving.Model.Rules;

/// <summary>Where a wide view is wished for and can be had, some usable view of the kit, in any telescope, is so wide.</summary>
internal static class WideView
{
    public static void Keep(PurchaseModel model)
    {
        if (model.Space.WishedFieldDeg is { } field)
        {
            model.RequireOneOf(MustFrame.ViewsOf(model, telescopeIndex: null).Where(view => MustFrame.IsWide(view, field)));
        }
    }
}
