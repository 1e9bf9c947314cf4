using Evenstep.Planning.Solving.Model.Subproblems;
using Google.OrTools.Sat;

namespace Evenstep.Planning.Solving.Model.Rules;

/// <summary>Of alike items at most one is bought: the cheapest, where nothing else tells them apart.</summary>
internal static class OneOfAlikeItems
{
    public static void Keep(Master master)
    {
        var certain = master.Cp.TrueLiteral();
        foreach (var barlow in master.Settled.Barlows)
        {
            Name(master, barlow, certain);
        }

        for (var index = 0; index < master.Settled.Choices.Length; index++)
        {
            Name(master, master.Settled.Choices[index], master.Chosen(index));
        }
    }

    private static void Name(Master master, Choice choice, ILiteral chosen)
    {
        if (choice.Items.Length == 1 || !master.Settled.Question.TellsItemsApart)
        {
            master.Name(choice.Cheapest, chosen);
            return;
        }

        foreach (var item in choice.Items)
        {
            master.Name(item, master.Cp.NewBoolVar(""));
        }

        master.Cp.Add(LinearExpr.Sum(choice.Items.Select(master.Bought)) == LinearExpr.Sum([chosen]));
    }
}
