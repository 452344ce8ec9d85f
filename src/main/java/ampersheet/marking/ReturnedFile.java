package ampersheet.marking;

import java.util.List;

/**
 * One file of the folder of answers, read as far as it can be.
 *
 * @param name as it is shown
 * @param answers in the order in which they stand
 * @param faults what could not be read
 */
record ReturnedFile(String name, List<TypedAnswer> answers, FileFaults faults) {
    ReturnedFile {
        answers = List.copyOf(answers);
    }
}
