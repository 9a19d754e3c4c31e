package outwind.report.json;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import outwind.board.Board;
import outwind.board.Place;
import outwind.board.TouchGrid;
import outwind.board.Units;
import outwind.flatten.GridPromise;
import outwind.flatten.TouchPlan;
import outwind.report.words.TouchSheet;

class TouchJsonTest {

    private static final TouchGrid GRID = new TouchGrid(1180, 212, 5, 2, 15);

    private static final TouchSheet SHEET = sheet();

    private static TouchSheet sheet() {
        List<GridPromise> promises = List.of(new GridPromise(GRID.with(3, 3), 0.9), new GridPromise(GRID, 0.4));
        return new TouchSheet(Board.untouched("left", Units.MILLIMETRES, 1180, 212, OptionalDouble.of(31),
            OptionalDouble.of(26)), new TouchPlan(promises, promises.get(1), TouchPlan.Reason.ASKED,
            TouchPlan.Pace.USUAL));
    }

    private static JsonNode json() throws JsonProcessingException {
        return new ObjectMapper().readTree(TouchJson.of(SHEET));
    }

    // By their names: three columns show no kink, two rows no cup (the documentation of both).
    @Test
    void whatAGridPromisesStandsUnderItsNames() throws JsonProcessingException {
        for (int k = 0; k < 2; k++) {
            JsonNode grid = json().at("/grids/" + k);
            assertEquals(k == 0 ? 3 : 5, grid.get("columns").asInt());
            assertEquals(k == 0 ? 3 : 2, grid.get("rows").asInt());
            assertEquals(k == 0 ? 0.9 : 0.4, grid.get("range").asDouble());
            assertEquals(k == 1, grid.get("seesKinks").asBoolean());
            assertEquals(k == 0, grid.get("seesCup").asBoolean());
            assertEquals(TouchPlan.Pace.USUAL.minutes(SHEET.plan().promises().get(k).grid()),
                grid.get("minutes").asDouble());
        }
    }

    @Test
    void theBoardAndTheWayRoundItStandUnderTheirNames() throws JsonProcessingException {
        JsonNode json = json();

        assertEquals(List.of(1180.0, 212.0, 31.0, 26.0), List.of(json.at("/board/length").asDouble(),
            json.at("/board/width").asDouble(), json.at("/board/thickness").asDouble(),
            json.at("/board/target").asDouble()));
        assertEquals(List.of(5, 2), List.of(json.get("columns").asInt(), json.get("rows").asInt()));
        assertEquals(TouchGrid.travel(GRID.tour()), json.get("travel").asDouble());
        assertEquals(10, json.get("places").size());
        for (int k = 0; k < 10; k++) {
            Place place = GRID.tour().get(k).place();
            JsonNode there = json.at("/places/" + k);
            assertEquals(place, new Place(there.get("x").asDouble(), there.get("y").asDouble()));
            assertEquals(SHEET.calipers().contains(place), there.get("caliper").asBoolean());
        }
    }
}
